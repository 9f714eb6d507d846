interface Reach {
  readonly fromMs: number
  readonly toMs: number
}

/** From when on minutes are shown in fives. */
const coarseFrom = 120

/** "12–16", in minutes from now, rounded outward; null once the whole interval is past. */
export function minutesLeft({ fromMs, toMs }: Reach, nowMs: number): string | null {
  if (toMs <= nowMs) return null
  const step = toMs - nowMs > coarseFrom * minuteMs ? 5 : 1
  const from = Math.floor(Math.max(0, fromMs - nowMs) / (step * minuteMs)) * step
  const to = Math.ceil((toMs - nowMs) / (step * minuteMs)) * step
  return `${from}–${to}`
}

/** "11:50 to 11:54": whole minutes, rounded outward. */
export const clockRange = ({ fromMs, toMs }: Reach, time: (atMs: number) => string): string =>
  `${time(Math.floor(fromMs / minuteMs) * minuteMs)} to ${time(Math.ceil(toMs / minuteMs) * minuteMs)}`

const minuteMs = 60_000
