const minuteMs = 60_000
const timeStepsMs = [1, 2, 5, 10, 15, 30, 60, 120, 240, 480, 1440].map((minutes) => minutes * minuteMs)

/** Marks of a number axis: 1, 2 or 5 times a power of ten, at most `most` of them. */
export function numberTicks(min: number, max: number, most: number): readonly number[] {
  const least = (max - min) / Math.max(1, most)
  if (!(least > 0)) return []
  const power = 10 ** Math.floor(Math.log10(least))
  const step = [1, 2, 5, 10].map((factor) => factor * power).find((each) => each >= least * (1 - 1e-9)) ?? 10 * power
  return multiples(step, min, max)
}

/** Marks of a time axis in ms UTC: whole minutes, quarters, hours, at most `most` of them. */
export function timeTicks(min: number, max: number, most: number): readonly number[] {
  const least = (max - min) / Math.max(1, most)
  const step = timeStepsMs.find((each) => each >= least) ?? Math.ceil(least / (1440 * minuteMs)) * 1440 * minuteMs
  return step > 0 ? multiples(step, min, max) : []
}

/** A range round these values with some air, never without width. */
export function rangeRound(values: readonly number[], air = 0.06): readonly [number, number] {
  const [min, max] = [Math.min(...values), Math.max(...values)]
  if (!(Number.isFinite(min) && Number.isFinite(max))) return [0, 1]
  const width = max > min ? max - min : Math.max(1, Math.abs(max) * 0.1)
  return [min - width * air, max + width * air]
}

/** Computed as whole numbers of steps, so that 0.3 does not become 0.30000000000000004. */
function multiples(step: number, min: number, max: number): readonly number[] {
  const first = Math.ceil(min / step - 1e-9)
  const last = Math.floor(max / step + 1e-9)
  const count = Math.min(100, last - first + 1)
  return Array.from({ length: Math.max(0, count) }, (_, index) => Number(((first + index) * step).toPrecision(12)))
}
