/**
 * One thing in which a batch was made otherwise than its revision says. Shares 0–1, temperatures °C. `beyond`: outside
 * what the revision allows, and so worth taking over unless somebody says no.
 */
export type MadeOtherwise = { readonly id: string; readonly title: string; readonly beyond: boolean } & (
  | { readonly kind: 'share'; readonly line: string; readonly planned: number; readonly made: number }
  /** Never weighed. */
  | { readonly kind: 'line-out'; readonly line: string; readonly planned: number }
  | {
      readonly kind: 'step'
      readonly step: string
      readonly field: StepField
      readonly planned?: number
      readonly made: number
    }
  | { readonly kind: 'step-out'; readonly step: string }
  | {
      readonly kind: 'unplanned'
      readonly materialId?: string
      readonly share: number
      readonly vessel: string
      /** The step of the revision after which it went in; absent where it was the first thing of all. */
      readonly after?: string
      readonly reason: string
    }
)

export type StepField = 'minutes' | 'holdMinutes' | 'hours' | 'targetC' | 'bothAtLeastC' | 'maxDifferenceC' | 'rpm'
