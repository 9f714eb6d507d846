import type { Check } from './formula'
import type { BatchEvent } from './kinds'
import { type StandardReading, standardOf, unlike } from './read-unlike'
import { entriesOf, type RecordEntry, type Stamp, type Struck } from './record-entries'
import { partsByEntry } from './record-rework'
import { restedOf } from './stability'
import type { BatchState } from './state'

/** Readings and observations, against the specification where it states something. */
export interface ResultRecord {
  readonly inProcess: readonly ResultRow[]
  /** Once the structure has settled: what the disposition rests on. */
  readonly rested: readonly ResultRow[]
  /** Taken from jars kept under stated conditions. */
  readonly stability: readonly ResultRow[]
  /** Checks of the specification without a result yet. */
  readonly missing: readonly Check[]
  /** The rework that results stand after now; 0 where there was none. */
  readonly part: number
}

export interface ResultRow extends Stamp {
  readonly label: string
  readonly body: Extract<BatchEvent, { kind: 'measured' }>['body']
  readonly check?: Check
  /** 0 for the making, else the rework after which it was read. */
  readonly part: number
  readonly verdict: 'within' | 'under' | 'over' | 'none'
  /** What was asked for where it was read otherwise. */
  readonly unlike: StandardReading
  readonly struck?: Struck
}

export function resultRecord(state: BatchState, initialsOf: (id: string) => string): ResultRecord {
  const checks = state.header.revision.specification
  const adjusting = new Set(state.plan.steps.filter(({ step }) => step.kind === 'adjust').map(({ id }) => id))
  const all = entriesOf(state, 'measured', initialsOf)
  const partOf = partsByEntry(state)
  const onTheWay = readingsOnTheWay(all, adjusting)
  const rows = all.map(({ event, ...stamp }): ResultRow => {
    const check = checks.find((each) => each.id === event.body.check)
    const own = check && isKept(event.body) ? restedOf(state, check.id) : undefined
    return {
      ...stamp,
      label: event.body.label,
      body: event.body,
      part: partOf(event.id),
      verdict: onTheWay.has(event.id) ? 'none' : verdictOf(event.body, check),
      unlike: unlike(standardOf(check?.method, own), event.body),
      ...(check === undefined ? {} : { check }),
    }
  })
  const kept = ({ body }: ResultRow): boolean => isKept(body)
  // After a rework what was read before it says nothing of the product any more; how it was made is told once.
  const countsNow = ({ part, check }: ResultRow): boolean => part === state.parts.length || check?.when !== 'after-rest'
  const isRested = ({ check, body }: ResultRow): boolean =>
    check === undefined ? body.step === undefined : check.when === 'after-rest'
  const done = new Set(
    rows.filter((row) => !row.struck && !kept(row) && countsNow(row)).flatMap((row) => row.check?.id ?? []),
  )
  return {
    part: state.parts.length,
    stability: rows.filter(kept),
    rested: rows.filter((row) => !kept(row) && isRested(row)),
    inProcess: rows.filter((row) => !kept(row) && !isRested(row)),
    missing: checks.filter((check) => !done.has(check.id)),
  }
}

/** A reading of a step is the batch's own, whatever it was read with. */
const isKept = ({ conditions, step }: ResultRow['body']): boolean => conditions !== undefined && step === undefined

/** The last result of each check after the rest: what a decision rests on. */
export function latestRested({ rested, part }: ResultRecord): readonly ResultRow[] {
  const last = new Map(
    rested.filter((row) => !row.struck && row.part === part).map((row) => [row.check?.id ?? row.label, row]),
  )
  return [...last.values()]
}

export const isOutside = ({ verdict }: ResultRow): boolean => verdict === 'under' || verdict === 'over'

/** While something is adjusted only its last reading is held to the limits: the others are how it got there. */
function readingsOnTheWay(
  all: readonly RecordEntry<'measured'>[],
  adjusting: ReadonlySet<string>,
): ReadonlySet<string> {
  const own = all.filter(({ event, struck }) => !struck && adjusting.has(event.body.step ?? ''))
  const last = new Map(own.map(({ event }) => [event.body.step, event.id]))
  return new Set(
    own
      .map(({ event }) => event)
      .filter(({ id, body }) => last.get(body.step) !== id)
      .map(({ id }) => id),
  )
}

/** A number against its limits; an observation as the person judged it. */
export function verdictOf(
  { value, good }: { readonly value?: number; readonly good?: boolean },
  check: Pick<Check, 'limits'> | undefined,
): ResultRow['verdict'] {
  const { min, max } = check?.limits ?? {}
  if (value !== undefined && min !== undefined && value < min) return 'under'
  if (value !== undefined && max !== undefined && value > max) return 'over'
  if (value !== undefined && (min !== undefined || max !== undefined)) return 'within'
  if (good === undefined) return 'none'
  return good ? 'within' : 'over'
}
