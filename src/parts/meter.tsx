import './meter.css'

interface MeterProps {
  /** "In so far" */
  label: string
  /** "388.95" */
  value: string
  /** "of 500.00 g" */
  of: string
  /** 0 to 1; more is drawn as full. */
  fraction: number
}

/** How much of a whole is in: the figures, and a bar that says the same. */
export const Meter = ({ label, value, of, fraction }: MeterProps) => (
  <div class="meter">
    <p>
      {label} <strong class="meter-value">{value}</strong> <span class="meter-of">{of}</span>
    </p>
    <div class="meter-bar" aria-hidden="true">
      <div class="meter-fill" style={{ inlineSize: `${Math.min(Math.max(fraction, 0), 1) * 100}%` }} />
    </div>
  </div>
)
