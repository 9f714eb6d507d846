/** The heading that takes the focus when its step is taken in hand. */
export const StepHeading = ({ text }: { text: string }) => (
  <h1 id="step-heading" class="step-heading" tabIndex={-1}>
    {text}
  </h1>
)
