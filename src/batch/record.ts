import type { Micrograms } from '../trade/mass'
import type { Lot, Person } from './catalogue'
import type { BatchHeader } from './header'
import type { PlannedStep } from './plan'
import { type AdjustCurve, adjustCurves, type HeatCurve, heatCurves } from './record-curves'
import { type DeviationRecord, deviationRecords } from './record-deviations'
import { type DeviceRecord, deviceRecord } from './record-device'
import { entriesOf, type Stamp } from './record-entries'
import { type Equipment, equipmentOf } from './record-equipment'
import { type LimitRow, limitRows } from './record-limits'
import { type LotRow, lotRows } from './record-lots'
import { type MassRecord, massRecord } from './record-mass'
import { lotCodesOf, type MaterialRow, materialRows, type UnplannedRow, unplannedRows } from './record-materials'
import { type PictureRow, pictureRows } from './record-pictures'
import { type ResultRecord, resultRecord } from './record-results'
import { type DecisionRow, decisionsOf, type ReworkRecord, reworkRecords } from './record-rework'
import { type SignatureRow, signatureRows } from './record-signatures'
import { type StageRow, stageRows } from './record-stages'
import { type StepRow, stepRows } from './record-steps'
import { type TimerRow, timerRows } from './record-timers'
import { type TrailRow, trailOf } from './record-trail'
import type { BatchState, Doubt } from './state'
import { type Verification, verifyTrail } from './verify-trail'

/** Everything a batch record shows, read off the folded log; nothing in it is kept anywhere else. */
export interface BatchRecord {
  readonly header: BatchHeader
  readonly stage: BatchState['stage']
  readonly totalUg: Micrograms
  /** Sizes that remedies have replaced, the planned one first. */
  readonly totalWas: readonly Micrograms[]
  readonly opened: Stamp | null
  readonly closed: DecisionRow | null
  /** Every decision so far, the first one first. */
  readonly decisions: readonly DecisionRow[]
  readonly reworks: readonly ReworkRecord[]
  readonly people: { readonly performed: readonly string[]; readonly checked: readonly string[] }
  readonly signatures: readonly SignatureRow[]
  /** What tablets signed by their keys. */
  readonly device: DeviceRecord
  readonly preflight: BatchState['preflight']
  readonly equipment: Equipment
  readonly materials: readonly MaterialRow[]
  readonly unplanned: readonly UnplannedRow[]
  readonly lots: readonly LotRow[]
  readonly limits: readonly LimitRow[]
  readonly deviations: readonly DeviationRecord[]
  readonly steps: readonly StepRow[]
  /** Every step of the plan, weighings too, in order. */
  readonly allSteps: readonly PlannedStep[]
  readonly timers: readonly TimerRow[]
  readonly heatCurves: readonly HeatCurve[]
  readonly adjustCurves: readonly AdjustCurve[]
  readonly results: ResultRecord
  readonly mass: MassRecord
  /** Yield at each stage. */
  readonly stages: readonly StageRow[]
  /** Codes of lots by id: planned, opened later, and of what was not in the plan as far as they are known. */
  readonly lotCodes: ReadonlyMap<string, string>
  readonly notes: readonly NoteRow[]
  readonly pictures: readonly PictureRow[]
  readonly doubts: readonly Doubt[]
  readonly unknownKinds: readonly string[]
  readonly trail: readonly TrailRow[]
  readonly verification: Verification
}

export interface NoteRow extends Stamp {
  readonly text: string
  readonly step?: string
  /** The deviation that it looks into. */
  readonly deviation?: string
  readonly struck: boolean
}

/** `people` and `lots` of the catalogue name whom and what the batch itself does not, by id. */
export function recordOf(
  state: BatchState,
  people?: ReadonlyMap<string, Person>,
  lots?: ReadonlyMap<string, Lot>,
): BatchRecord {
  const initialsOf = initialsIn(state.header, people)
  const lotCodes = lotCodesOf(state, lots)
  const events = state.entries.map(({ event }) => event)
  return {
    header: state.header,
    stage: state.stage,
    totalUg: state.totalUg,
    totalWas: state.totalWas,
    opened: entriesOf(state, 'opened', initialsOf)[0] ?? null,
    closed: closingOf(state, initialsOf),
    decisions: decisionsOf(state, initialsOf),
    reworks: reworkRecords(state, initialsOf),
    people: peopleOf(state, initialsOf),
    signatures: signatureRows(state, initialsOf),
    device: deviceRecord(events),
    preflight: state.preflight,
    equipment: equipmentOf(state, initialsOf),
    materials: materialRows(state, initialsOf),
    unplanned: unplannedRows(state, initialsOf, lots),
    lots: lotRows(state, lots),
    limits: limitRows(state),
    deviations: deviationRecords(state, initialsOf),
    steps: stepRows(state, initialsOf).filter(({ planned }) => planned.part === undefined),
    allSteps: state.plan.steps,
    timers: timerRows(state, initialsOf),
    heatCurves: heatCurves(state),
    adjustCurves: adjustCurves(state),
    results: resultRecord(state, initialsOf),
    mass: massRecord(state, initialsOf),
    stages: stageRows(state),
    lotCodes,
    notes: entriesOf(state, 'noted', initialsOf).map(({ event, struck, ...stamp }) => ({
      ...stamp,
      text: event.body.text,
      struck: struck !== undefined,
      ...(event.body.step === undefined ? {} : { step: event.body.step }),
      ...(event.body.deviation === undefined ? {} : { deviation: event.body.deviation }),
    })),
    pictures: pictureRows(state, initialsOf),
    doubts: state.doubts,
    unknownKinds: [...state.unknownKinds],
    trail: trailOf(state, initialsOf),
    verification: verifyTrail(events),
  }
}

/** Initials by a person's id; an id that nobody knows stands for itself. */
export function initialsIn(header: BatchHeader, people?: ReadonlyMap<string, Person>): (id: string) => string {
  const { performs, checks, others } = header.people
  const known = new Map([performs, ...(checks ? [checks] : []), ...others].map((each) => [each.id, each.initials]))
  return (id) => known.get(id) ?? people?.get(id)?.initials ?? id
}

/** Open again for a rework it is not closed, whatever was decided before. */
const closingOf = (state: BatchState, initialsOf: (id: string) => string): BatchRecord['closed'] =>
  state.decision === undefined ? null : (decisionsOf(state, initialsOf).at(-1) ?? null)

/** Who wrote weighings and steps, and who checked them, in the order of their first entry. */
function peopleOf(state: BatchState, initialsOf: (id: string) => string): BatchRecord['people'] {
  const weighed = entriesOf(state, 'weighed', initialsOf)
  const finished = entriesOf(state, 'step-finished', initialsOf)
  const performed = [...weighed, ...entriesOf(state, 'adjusted', initialsOf), ...finished].map(({ by }) => by)
  const checked = [...weighed, ...finished].flatMap(({ event }) => event.body.checkedBy ?? []).map(initialsOf)
  const { performs, checks } = state.header.people
  return {
    performed: performed.length > 0 ? [...new Set(performed)] : [performs.initials],
    checked: checked.length > 0 ? [...new Set(checked)] : checks ? [checks.initials] : [],
  }
}
