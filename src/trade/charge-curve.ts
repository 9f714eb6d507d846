/**
 * Charge of a batch itself, adjuster left out, in mol per kg, at rising pH. It only falls as the pH rises: every acid
 * group gives off its proton once.
 */
export interface ChargeCurve {
  readonly ph: readonly number[]
  readonly molPerKg: readonly number[]
}

export interface ChargePoint {
  readonly ph: number
  readonly molPerKg: number
}

/** Readings nearer than this are one: their difference is the meter's. */
const mergedWithinPh = 0.1

/**
 * The curve through the records of a batch: near ones are merged into their mean, and what would rise is levelled. Null
 * where fewer than two points are left, from which nothing can be told.
 */
export function chargeCurve(points: readonly ChargePoint[]): ChargeCurve | null {
  const levelled = fallingOnly(merged([...points].sort((one, other) => one.ph - other.ph)))
  if (levelled.length < 2) return null
  return { ph: levelled.map(({ ph }) => ph), molPerKg: levelled.map(({ molPerKg }) => molPerKg) }
}

/** The charge at a pH; straight between the points, and on beyond the ends with their slope. */
export function chargeAt({ ph, molPerKg }: ChargeCurve, at: number): number {
  const inside = ph.findIndex((each, index) => index > 0 && at <= each)
  const right = inside === -1 ? ph.length - 1 : inside
  const [x0 = 0, x1 = 1] = [ph[right - 1], ph[right]]
  const [y0 = 0, y1 = 0] = [molPerKg[right - 1], molPerKg[right]]
  return y0 + ((y1 - y0) * (at - x0)) / (x1 - x0)
}

interface Group extends ChargePoint {
  readonly size: number
}

function merged(sorted: readonly ChargePoint[]): readonly Group[] {
  const groups: Group[] = []
  for (const point of sorted) {
    const last = groups.at(-1)
    const near = last !== undefined && point.ph - last.ph < mergedWithinPh
    if (near) groups[groups.length - 1] = together(last, { ...point, size: 1 })
    else groups.push({ ...point, size: 1 })
  }
  return groups
}

/** Pools neighbours that rise, as isotonic regression does, keeping each pH. */
function fallingOnly(groups: readonly Group[]): readonly ChargePoint[] {
  const pools: { molPerKg: number; weight: number; phs: number[] }[] = []
  for (const { ph, molPerKg, size } of groups) {
    pools.push({ molPerKg, weight: size, phs: [ph] })
    for (;;) {
      const [before, last] = pools.slice(-2)
      if (pools.length < 2 || before === undefined || last === undefined || last.molPerKg <= before.molPerKg) break
      const weight = before.weight + last.weight
      const molPerKgTogether = (before.molPerKg * before.weight + last.molPerKg * last.weight) / weight
      pools.splice(-2, 2, { molPerKg: molPerKgTogether, weight, phs: [...before.phs, ...last.phs] })
    }
  }
  return pools.flatMap(({ molPerKg, phs }) => phs.map((ph) => ({ ph, molPerKg })))
}

const together = (one: Group, other: Group): Group => {
  const size = one.size + other.size
  const mean = (a: number, b: number) => (a * one.size + b * other.size) / size
  return { ph: mean(one.ph, other.ph), molPerKg: mean(one.molPerKg, other.molPerKg), size }
}
