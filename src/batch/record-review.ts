import type { Check } from './formula'
import type { BatchRecord } from './record'
import type { DeviationRecord } from './record-deviations'
import type { DeviceRow } from './record-device'
import type { LimitRow } from './record-limits'
import type { LotRow } from './record-lots'
import type { ResultRow } from './record-results'
import type { StepRow } from './record-steps'
import type { TimerRow } from './record-timers'
import type { TrailRow } from './record-trail'
import type { Doubt } from './state'
import type { Verification } from './verify-trail'

/** Something that a reviewer looks at first. `at` is its place in the record: `entry-…`, `step-…`, or a part's name. */
export type Finding = { readonly at: string } & FindingKind

type FindingKind =
  | { readonly kind: 'chain'; readonly verification: Extract<Verification, { intact: false }> }
  | { readonly kind: 'device'; readonly row: DeviceRow }
  | { readonly kind: 'unknown'; readonly kinds: readonly string[] }
  | { readonly kind: 'doubt'; readonly doubt: Doubt }
  | { readonly kind: 'deviation'; readonly deviation: DeviationRecord }
  | { readonly kind: 'result'; readonly result: ResultRow }
  | { readonly kind: 'limit'; readonly limit: LimitRow }
  | { readonly kind: 'unexplained'; readonly massUg: number; readonly limitUg: number }
  | { readonly kind: 'lot'; readonly lot: LotRow; readonly why: 'expired' | 'to be tested again' | 'in quarantine' }
  | { readonly kind: 'missing'; readonly check: Check }
  | { readonly kind: 'second'; readonly step: string; readonly why: 'not checked' | 'not signed' }
  | { readonly kind: 'gate'; readonly step: string; readonly gate: StepRow['gates'][number] }
  | { readonly kind: 'skipped'; readonly row: StepRow }
  | { readonly kind: 'kept'; readonly kept: BatchRecord['header']['kept'][number] }
  | { readonly kind: 'instrument'; readonly check: BatchRecord['equipment']['checks'][number] }
  | { readonly kind: 'timer'; readonly timer: TimerRow }
  | {
      readonly kind: 'entry'
      readonly what: 'not planned' | 'lost' | 'clock' | 'struck' | 'late'
      readonly row: TrailRow
    }

/** A bell stopped sooner than this after its time is no more than the way to the tablet. */
const lateMs = 5 * 60_000

/**
 * All that is out of the ordinary, what weighs most first; nothing else of the record is in it. `unfit`: signatures of
 * tablets that were found not to fit.
 */
export function findingsOf(record: BatchRecord, unfit: readonly DeviceRow[] = []): readonly Finding[] {
  const { verification, unknownKinds, doubts, deviations, limits, header, equipment, timers } = record
  return [
    ...(verification.intact ? [] : [{ kind: 'chain', verification, at: 'verification' } as const]),
    ...unfit.map((row) => ({ kind: 'device', row, at: 'verification' }) as const),
    ...(unknownKinds.length === 0 ? [] : [{ kind: 'unknown', kinds: unknownKinds, at: 'trail' } as const]),
    ...doubts.map((doubt) => ({ kind: 'doubt', doubt, at: placeOf(doubt) }) as const),
    ...deviations.map((deviation) => ({ kind: 'deviation', deviation, at: `entry-${deviation.entry}` }) as const),
    ...outOfLimits(record),
    ...limits.flatMap((limit) =>
      record.closed !== null && limit.verdict === 'outside' ? [{ kind: 'limit', limit, at: 'materials' } as const] : [],
    ),
    ...unexplained(record),
    ...badLots(record),
    ...missing(record),
    ...secondChecks(record),
    ...stepsOf(record).flatMap((row) =>
      row.gates.map((gate) => ({ kind: 'gate', gate, step: row.planned.id, at: `entry-${gate.entry}` }) as const),
    ),
    ...stepsOf(record).flatMap((row) =>
      row.finished?.how === 'skipped' ? [{ kind: 'skipped', row, at: `done-${row.planned.id}` } as const] : [],
    ),
    ...header.kept.map((kept) => ({ kind: 'kept', kept, at: 'equipment' }) as const),
    ...equipment.checks.flatMap((check) =>
      check.good ? [] : [{ kind: 'instrument', check, at: 'equipment' } as const],
    ),
    ...timers.flatMap((timer) =>
      timer.lateMs !== undefined && (timer.lateMs <= -60_000 || timer.lateMs >= lateMs)
        ? [{ kind: 'timer', timer, at: `entry-${timer.entry}` } as const]
        : [],
    ),
    ...entries(record),
  ]
}

/** Those of the formula, then those of each rework. */
const stepsOf = ({ steps, reworks }: BatchRecord): readonly StepRow[] => [
  ...steps,
  ...reworks.flatMap((rework) => rework.steps),
]

function placeOf(doubt: Doubt): string {
  return 'entry' in doubt ? `entry-${doubt.entry}` : `entry-${doubt.entries.at(-1)}`
}

function outOfLimits({ results }: BatchRecord): readonly Finding[] {
  const all = [...results.inProcess, ...results.rested, ...results.stability]
  return all.flatMap((result) =>
    !result.struck && (result.verdict === 'under' || result.verdict === 'over')
      ? [{ kind: 'result', result, at: `entry-${result.entry}` }]
      : [],
  )
}

function unexplained({ mass }: BatchRecord): readonly Finding[] {
  const { isFlagged, unexplainedUg, unexplainedLimitUg } = mass
  if (!isFlagged || unexplainedUg === null || unexplainedLimitUg === null) return []
  return [{ kind: 'unexplained', massUg: unexplainedUg, limitUg: unexplainedLimitUg, at: 'mass' }]
}

/** A lot past its day when it was taken from, and one that nobody had released. */
function badLots({ lots }: BatchRecord): readonly Finding[] {
  return lots.flatMap((lot): readonly Finding[] => {
    const { id, expires, retestOn, usedOn = '', status } = lot
    const at = `lot-${id}`
    if (expires !== undefined && usedOn > expires) return [{ kind: 'lot', lot, why: 'expired', at }]
    if (status === 'quarantine') return [{ kind: 'lot', lot, why: 'in quarantine', at }]
    return retestOn !== undefined && usedOn > retestOn ? [{ kind: 'lot', lot, why: 'to be tested again', at }] : []
  })
}

/** While a batch is in hand its checks are still to come. */
function missing({ stage, results }: BatchRecord): readonly Finding[] {
  if (stage === 'in-hand' || stage === 'parked') return []
  return results.missing.map((check) => ({ kind: 'missing', check, at: 'results' }))
}

/** Steps that ask for a second person: nobody looked, or somebody did and signed nothing where others signed. */
function secondChecks(record: BatchRecord): readonly Finding[] {
  const { allSteps, reworks, signatures } = record
  const materials = [...record.materials, ...reworks.flatMap((rework) => rework.materials)]
  const steps = stepsOf(record)
  const signed = new Set(signatures.flatMap(({ looked }) => (looked && !looked.struck ? [looked.step] : [])))
  return allSteps.flatMap(({ id, step }): readonly Finding[] => {
    if (step.secondPerson !== true) return []
    const weighings = materials.find((row) => row.step === id)?.weighings.filter(({ counts }) => counts) ?? []
    const done = steps.find((row) => row.planned.id === id && row.finished?.how === 'done')
    const isDone = weighings.length > 0 || done !== undefined
    const isChecked = weighings.some(({ checkedBy }) => checkedBy !== undefined) || done?.checkedBy !== undefined
    const at = weighings.length > 0 ? `step-${id}` : `done-${id}`
    if (!isDone) return []
    if (!isChecked) return [{ kind: 'second', step: id, why: 'not checked', at }]
    return signatures.length > 0 && !signed.has(id) ? [{ kind: 'second', step: id, why: 'not signed', at }] : []
  })
}

const lossKinds = new Set(['spilled', 'discarded'])
const clockKinds = new Set(['clock-jumped', 'healed'])

function entries({ trail }: BatchRecord): readonly Finding[] {
  const standing = trail.filter(({ struck }) => struck === undefined)
  const of = (what: Extract<Finding, { kind: 'entry' }>['what'], rows: readonly TrailRow[]): readonly Finding[] =>
    rows.map((row) => ({ kind: 'entry', what, row, at: `entry-${row.entry}` }))
  return [
    ...of(
      'not planned',
      standing.filter(({ event }) => event.kind === 'unplanned-added'),
    ),
    ...of(
      'lost',
      standing.filter(({ event }) => lossKinds.has(event.kind)),
    ),
    ...of(
      'struck',
      trail.filter(({ struck }) => struck !== undefined),
    ),
    ...of(
      'late',
      standing.filter(({ writtenAtMs }) => writtenAtMs !== undefined),
    ),
    ...of(
      'clock',
      trail.filter(({ event }) => clockKinds.has(event.kind)),
    ),
  ]
}
