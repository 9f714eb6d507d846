/**
 * Speed of the outer edge of what turns, m/s, from turns a minute and its diameter in mm: v = π·d·n. First principles.
 */
export const tipSpeed = (rpm: number, diameterMm: number): number => (Math.PI * diameterMm * rpm) / 60_000

/** A tool, how fast it turns, and how much it stirs. Volumes in any one unit. */
export interface Stirring {
  readonly rpm: number
  readonly diameterMm: number
  readonly volume: number
}

/** The speed at which another tool's edge moves as fast: shear at the edge stays. n₂ = n₁·d₁ ÷ d₂. */
export const rpmAtTipSpeed = (from: Stirring, to: Omit<Stirring, 'rpm'>): number =>
  (from.rpm * from.diameterMm) / to.diameterMm

/**
 * The speed at which another tool puts as much power into each litre. In turbulent flow the power number of a shape is
 * constant, P = Np·ρ·N³·D⁵, so P/V ∝ N³·D⁵ ÷ V: n₂ = n₁·(d₁⁵·V₂ ÷ (d₂⁵·V₁))^⅓. A guide: tools of one shape, one density.
 */
export const rpmAtPowerPerVolume = (from: Stirring, to: Omit<Stirring, 'rpm'>): number =>
  from.rpm * Math.cbrt(((from.diameterMm / to.diameterMm) ** 5 * to.volume) / from.volume)
