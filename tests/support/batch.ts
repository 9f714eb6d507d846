import { decide } from '../../src/batch/decide'
import { type Event, inFoldOrder, type Source, type Tip } from '../../src/batch/event'
import { extendBatch } from '../../src/batch/extend'
import { foldBatch } from '../../src/batch/fold'
import type { Gate } from '../../src/batch/gate'
import { gatesOf } from '../../src/batch/gates'
import type { BatchHeader } from '../../src/batch/header'
import type { Intention } from '../../src/batch/intention'
import { isoOf } from '../../src/batch/iso-of'
import type { Bodies, RemedyKind } from '../../src/batch/kinds'
import type { BatchRefusal } from '../../src/batch/refusal'
import { seal } from '../../src/batch/seal'
import type { BatchState, DeviationState, StepState } from '../../src/batch/state'
import { advance, tipOf } from '../../src/batch/tip'
import { countingIds } from '../../src/devices/ids/counting-ids'
import { massIn } from '../../src/trade/ledger'
import { type Micrograms, microgramsFromGrams } from '../../src/trade/mass'

/** Grams as a person types them. */
export const grams = (text: string | number): Micrograms => microgramsFromGrams(Number(text))

export const minutesMs = (minutes: number): number => minutes * 60_000

/** Ten in the morning of the day that the demonstration stands at. */
export const morningMs = Date.UTC(2026, 10, 24, 10)

/**
 * A batch driven through the app's own door, with a clock that only moves when told to and ids that count. Acts throw
 * where the app refuses them; `refusal` is for what must be refused, and checks that it changed nothing.
 */
export interface TestBench {
  readonly state: BatchState
  readonly events: readonly Event[]
  nowMs: number
  by: string
  readonly intend: (intention: Intention) => readonly Event[]
  readonly refusal: (intention: Intention) => BatchRefusal
  /** The codes of the gates that an intention is refused for. */
  readonly gatesOn: (intention: Intention) => readonly Gate['code'][]
  readonly wait: (minutes: number) => void
  readonly weigh: (step: string, text: string, more?: { lot?: string; checkedBy?: string; source?: Source }) => string
  readonly read: (vessel: string, temperatureC: number) => void
  readonly charge: (step: string, more?: { residue?: string; rinse?: string }) => void
  readonly combine: (step: string, more?: { residue?: string; rinse?: string }) => void
  readonly timer: (step: string, minutes: number) => string
  readonly finish: (step: string, checkedBy?: string) => void
  readonly strike: (entry: string) => void
  readonly settle: (remedy: RemedyKind) => void
  readonly pass: (step: string, gate: string) => void
  readonly measure: (result: Partial<Bodies['measured']>) => void
  readonly step: (id: string) => StepState
  readonly gates: (step: string, moment?: 'begin' | 'finish') => readonly Gate['code'][]
  /** The deviation that waits for a way on. */
  readonly deviation: () => DeviationState
  readonly massIn: (vessel: string) => Micrograms
}

export function openTestBench(header: BatchHeader): TestBench {
  const bench = benchOn([], 'tablet')
  bench.by = header.people.performs.id
  bench.intend({ do: 'open', header, preflight: [] })
  return bench
}

/** The same batch on another tablet that has seen only these entries, and does not hear of later ones. */
export function forkOf(seen: readonly Event[], replica: string): TestBench {
  const ordered = [...seen].sort(inFoldOrder)
  return benchOn(ordered, replica)
}

/** Thrown by acts that the app refuses; anything else that is thrown is a mistake of ours. */
export class Refused extends Error {}

function benchOn(seen: readonly Event[], replica: string): TestBench {
  const counting = countingIds()
  const ids = { next: () => (replica === 'tablet' ? counting.next() : `${replica}-${counting.next()}`) }
  const events: Event[] = [...seen]
  let tip: Tip = tipOf(events, replica)
  let state: BatchState | null = seen.length === 0 ? null : foldBatch(seen)
  const decided = (intention: Intention) =>
    decide(state, intention, { nowMs: bench.nowMs, by: bench.by, newId: ids.next })
  const why = (value: string): string => value

  const bench: TestBench = {
    get state() {
      if (state === null) throw new Error('not opened')
      return state
    },
    events,
    nowMs: state === null ? morningMs : state.lastAtMs,
    by: state?.person ?? '',
    intend(intention) {
      const decision = decided(intention)
      if (!decision.ok) throw new Refused(`${intention.do} refused: ${JSON.stringify(decision.refusal)}`)
      const written = decision.value.map((draft) => {
        const at = isoOf(bench.nowMs, 60)
        const id = draft.id ?? ids.next()
        const event = seal(draft, tip, { stream: 'batch:one', replica, id, at, by: bench.by })
        tip = advance(tip, event)
        return event
      })
      if (written.length === 0) return written
      events.push(...written)
      state = state === null ? foldBatch(events) : extendBatch(state, written)
      return written
    },
    refusal(intention) {
      const before = fingerprint(state)
      const decision = decided(intention)
      if (decision.ok) throw new Error(`${intention.do} was accepted`)
      if (before !== fingerprint(state)) throw new Error('a refusal changed the batch')
      return decision.refusal
    },
    gatesOn(intention) {
      const refusal = bench.refusal(intention)
      if (refusal.code !== 'GATE') throw new Error(`refused otherwise: ${refusal.code}`)
      return refusal.gates.map((gate) => gate.code)
    },
    wait(minutes) {
      bench.nowMs += Math.round(minutesMs(minutes))
    },
    weigh(step, text, more = {}) {
      const checkedBy = more.checkedBy ?? checkerOf(bench, step)
      const [event] = bench.intend({
        do: 'weigh',
        step,
        reading: { mode: 're-tare', readingUg: grams(text) },
        source: more.source ?? { kind: 'typed', raw: text },
        ...(more.lot === undefined ? {} : { lot: more.lot }),
        ...(checkedBy === undefined ? {} : { checkedBy }),
      })
      return event?.id ?? ''
    },
    read: (vessel, temperatureC) => void bench.intend({ do: 'read-temperature', vessel, temperatureC }),
    charge: (step, { residue = '0', rinse = '0' } = {}) =>
      void bench.intend({ do: 'charge', step, residueUg: grams(residue), rinseUg: grams(rinse) }),
    combine: (step, { residue = '0', rinse = '0' } = {}) =>
      void bench.intend({ do: 'combine', step, residueUg: grams(residue), rinseUg: grams(rinse) }),
    timer(step, minutes) {
      bench.intend({ do: 'start-timer', step, label: step, minutes })
      return bench.step(step).timer ?? ''
    },
    finish: (step, checkedBy) =>
      void bench.intend({ do: 'finish-step', step, ...(checkedBy === undefined ? {} : { checkedBy }) }),
    strike: (entry) => void bench.intend({ do: 'strike', entry, reason: why('wrong number') }),
    settle: (remedy) =>
      void bench.intend({ do: 'settle', deviation: bench.deviation().id, remedy, reason: why('a scoop too many') }),
    pass: (step, gate) =>
      void bench.intend({ do: 'pass-gate', step, gate, detail: 'as shown', reason: why('there is no other way') }),
    measure: (result) => void bench.intend({ do: 'measure', result: { property: 'pH', label: 'pH', ...result } }),
    step(id) {
      const step = bench.state.steps.get(id)
      if (!step) throw new Error(`no step ${id}`)
      return step
    },
    gates: (step, moment = 'begin') => gatesOf(bench.state, step, bench.nowMs, moment).map((gate) => gate.code),
    deviation() {
      const open = [...bench.state.deviations.values()].find((each) => !each.settled)
      if (!open) throw new Error('no open deviation')
      return open
    },
    massIn: (vessel) => massIn(bench.state.ledger, vessel),
  }
  return bench
}

function checkerOf(bench: TestBench, step: string): string | undefined {
  const wanted = bench.state.plan.byId.get(step)?.step.secondPerson
  const { checks, performs } = bench.state.header.people
  if (!wanted || !checks) return undefined
  return checks.id === bench.by ? performs.id : checks.id
}

/** Everything that may change of a batch, as one text. */
export function fingerprint(state: BatchState | null): string {
  if (state === null) return ''
  const { header: _fixed, plan: _planned, entries, ...rest } = state
  return JSON.stringify([plain(rest), entries.map((entry) => [entry.event.id, entry.struck])])
}

/** A state as plain data, so that two can be compared to the last detail. */
export function plain(value: unknown): unknown {
  if (value instanceof Map) return [...value].map(([key, each]) => [key, plain(each)])
  if (value instanceof Set) return [...value]
  if (Array.isArray(value)) return value.map(plain)
  if (typeof value === 'object' && value !== null)
    return Object.fromEntries(Object.entries(value).map(([key, each]) => [key, plain(each)]))
  return value
}
