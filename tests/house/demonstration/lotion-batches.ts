import { weigh, weighChecked } from './acts.ts'
import { begin } from './begin.ts'
import { type Bench, idOf, openBench } from './bench.ts'
import { lotion } from './formula-lotion.ts'
import { headerOf } from './header.ts'
import { type Behaviour, nextDay, planStability, stabilityPulls } from './lotion-follow-up.ts'
import { type Mishaps, makeLotion } from './lotion-run.ts'
import { g } from './mass.ts'

interface Made {
  /** ISO date. */
  readonly on: string
  readonly by?: string
  readonly behaviour: Behaviour
  readonly mishaps?: Mishaps
  readonly note?: string
  /** Weeks whose jars nobody has pulled: missed, late, or due this very day. */
  readonly notPulled?: readonly number[]
}

/** The last day of the demonstration: pulls that fall later have not been made. */
const lastDay = '2026-11-24'

const mistypedShea = (bench: Bench): void => {
  const entry = weigh(bench, 'b-shea', g(99.8))
  bench.wait(0.4)
  bench.intend({ do: 'strike', entry, reason: 'slip of the point' })
  weigh(bench, 'b-shea')
}

const emulsifierOver = (bench: Bench): void => {
  weigh(bench, 'b-emulsifier', g(17.91))
  bench.wait(1)
  const [deviation] = bench.state.deviations.keys()
  bench.intend({ do: 'settle', deviation: deviation ?? '', remedy: 'accept', reason: 'inside what the formula allows' })
}

/** Still alone in its cup, so some can be taken out again. */
const preservativeTakenBack = (bench: Bench): void => {
  weighChecked(bench, 'c-preservative', g(5.412))
  bench.wait(0.8)
  bench.intend({ do: 'take-out', step: 'c-preservative', massUg: g(0.404), reason: 'poured too fast' })
}

const hydrationCutShort = (bench: Bench): void => {
  const timer = bench.state.timers.get(bench.state.steps.get('a-hydrate')?.timer ?? '')
  const leftMinutes = Math.max(0, ((timer?.deadlineAtMs ?? 0) - bench.nowMs) / 60_000)
  bench.wait(Math.max(0, leftMinutes - 6))
  bench.intend({
    do: 'pass-gate',
    step: 'a-hydrate',
    gate: 'TIMER_RUNNING',
    detail: '6 min of the 20 still to run',
    reason: 'looked smooth already',
  })
  bench.intend({ do: 'acknowledge-timer', timer: timer?.id ?? '' })
  bench.intend({ do: 'finish-step', step: 'a-hydrate', saw: 'smooth, no lumps' })
}

const handedOver = (bench: Bench): void => {
  weigh(bench, 'b-squalane')
  bench.wait(2)
  bench.intend({ do: 'hand-over', to: 'person-mo' })
  bench.by = 'person-mo'
}

const pinchOfOat = (bench: Bench): void => {
  weigh(bench, 'c-tocopherol')
  bench.intend({
    do: 'add-unplanned',
    name: 'Colloidal oat, a pinch more',
    materialId: 'colloidal-oat',
    vessel: 'cool-cup',
    netUg: g(0.35),
    lot: 'lot-oa-077',
    reason: 'to see whether it feels drier',
  })
}

const good = (ph: number, viscosity: number, thinsPerWeek = 0.009): Behaviour => ({ ph, viscosity, thinsPerWeek })

const made: readonly Made[] = [
  { on: '2026-09-01', behaviour: good(5.1, 11_400) },
  { on: '2026-09-08', behaviour: good(5.07, 11_900), by: 'person-mo' },
  { on: '2026-09-15', behaviour: good(5.13, 10_800), mishaps: { 'b-shea': mistypedShea } },
  { on: '2026-09-22', behaviour: good(5.05, 12_250), notPulled: [4] },
  { on: '2026-09-29', behaviour: good(5.11, 11_100), by: 'person-mo', notPulled: [8] },
  {
    on: '2026-10-06',
    behaviour: good(5.09, 13_100),
    mishaps: { 'b-emulsifier': emulsifierOver },
    note: 'A little thicker for its emulsifier; inside the limits.',
  },
  { on: '2026-10-13', behaviour: good(5.12, 11_650), mishaps: { 'b-squalane': handedOver } },
  { on: '2026-10-20', behaviour: good(5.08, 11_300), notPulled: [4] },
  {
    on: '2026-10-27',
    behaviour: good(5.14, 8_500, 0.021),
    mishaps: { 'a-hydrate': hydrationCutShort },
    note: 'Thin, but inside. The gum had 14 minutes instead of 20: watch the pulls.',
  },
  { on: '2026-11-03', behaviour: good(5.06, 11_750), mishaps: { 'c-preservative': preservativeTakenBack } },
  {
    on: '2026-11-10',
    behaviour: good(5.1, 11_500),
    mishaps: { 'c-tocopherol': pinchOfOat },
    by: 'person-mo',
    notPulled: [2],
  },
]

/** Eleven batches of the autumn with everything after them, and yesterday's, which waits for its rested checks. */
export function lotionBatches(): readonly Bench[] {
  return [...made.map(finishedLotion), yesterdaysLotion(made.length)]
}

function finishedLotion(batch: Made, index: number): Bench {
  const bench = lotionBench(batch.on, index, batch.by)
  makeLotion(bench, batch.mishaps ?? {})
  nextDay(bench, batch.behaviour, { decision: 'accept', ...(batch.note === undefined ? {} : { note: batch.note }) })
  planStability(bench, batch.on)
  stabilityPulls(bench, batch.on, batch.behaviour, { until: lastDay, leftOut: batch.notPulled ?? [] })
  return bench
}

function yesterdaysLotion(index: number): Bench {
  const bench = lotionBench('2026-11-23', index, undefined, '07:45')
  makeLotion(bench, {})
  bench.wait(5)
  bench.intend({ do: 'close', decision: 'hold', note: 'The jars rest until tomorrow; then pH, viscosity, a look.' })
  return bench
}

function lotionBench(on: string, index: number, performs: string | undefined, at = '09:20'): Bench {
  const offset = on < '2026-10-25' ? '+01:00' : '+00:00'
  const opened = `${on}T${at}:00${offset}`
  const header = headerOf(lotion, {
    id: idOf(Date.parse(opened), index + 1),
    number: index + 1,
    sizeUg: g(500),
    on,
    ...(performs === undefined ? {} : { performs }),
  })
  return begin(openBench(header, opened, 101 + index), header)
}
