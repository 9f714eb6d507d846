import { openLedger } from '../trade/ledger'
import { type Event, inFoldOrder } from './event'
import { applyEntry } from './fold-entry'
import { withdrawn } from './fold-process'
import { firstDoubtOfFork, isFork } from './fork'
import { freshStep, freshVessel } from './fresh-step'
import { msOf } from './instant'
import { type BatchEvent, isKnown } from './kinds'
import { planBatch } from './plan-batch'
import type { BatchState, Entry } from './state'

/**
 * Folds the whole log of a batch, in whatever order its entries arrive. Struck entries stay legible in `entries` and
 * count for nothing else. Throws where the log has no `opened` entry or its formula cannot be planned: such a batch
 * was never written by `decide`.
 */
export function foldBatch(events: readonly Event[]): BatchState {
  const ordered = [...events].sort(inFoldOrder)
  const state = openState(ordered)
  const struck = strikesIn(ordered)
  for (const event of ordered) foldEntry(state, event, struck)
  return state
}

/** Kinds that record an act in the log itself and so are never struck out. */
const lasting = new Set([
  'opened',
  'struck',
  'deviation-noticed',
  'healed',
  'clock-jumped',
  'signed',
  'device-signed',
  'closed',
  'abandoned',
  'reworked',
])

export const canBeStruck = (kind: string): boolean => !lasting.has(kind)

export type Strike = Extract<BatchEvent, { kind: 'struck' }>

/** Folds one entry into `state`, in place; `struck` holds what strikes it out, by its id. */
export function foldEntry(state: BatchState, event: Event, struck: ReadonlyMap<string, Strike>): void {
  const strike = struck.get(event.id)
  const fork = isFork(state, event)
  state.entries.push(entryOf(event, strike))
  const writtenAtMs = msOf(event.at)
  const atMs = event.occurredAt === undefined ? writtenAtMs : msOf(event.occurredAt)
  state.lastAtMs = Math.max(state.lastAtMs, writtenAtMs)
  state.lastLamport = event.lamport
  state.lastHash = event.hash
  state.nextOf.set(event.replica, Math.max(state.nextOf.get(event.replica) ?? 0, event.n + 1))
  if (fork) state.forked = true
  if (!isKnown(event)) {
    state.unknownKinds.add(event.kind)
    return
  }
  if (event.kind === 'struck' && !state.entries.some((entry) => entry.event.id === event.body.entry)) {
    state.doubts.push({ code: 'STRUCK_UNKNOWN', entry: event.id })
  }
  if (strike) {
    if (event.kind === 'remedy-chosen') withdrawn(state, event, strikeOf(strike))
    return
  }
  const doubt = state.forked ? firstDoubtOfFork(state, event) : null
  if (doubt) state.doubts.push(doubt)
  applyEntry(state, event, atMs)
}

const entryOf = (event: Event, strike: Strike | undefined): Entry =>
  strike ? { event, struck: strikeOf(strike) } : { event }

const strikeOf = (strike: Strike): NonNullable<Entry['struck']> => ({
  reason: strike.body.reason,
  atMs: msOf(strike.at),
  by: strike.by,
  event: strike.id,
})

function strikesIn(events: readonly Event[]): ReadonlyMap<string, Strike> {
  const strikes = new Map<string, Strike>()
  const kinds = new Map(events.map((event) => [event.id, event.kind]))
  for (const event of events) {
    if (!isKnown(event) || event.kind !== 'struck') continue
    const kind = kinds.get(event.body.entry)
    if (kind !== undefined && canBeStruck(kind) && !strikes.has(event.body.entry)) strikes.set(event.body.entry, event)
  }
  return strikes
}

function openState(ordered: readonly Event[]): BatchState {
  const opened = ordered.find(
    (event): event is Extract<BatchEvent, { kind: 'opened' }> => isKnown(event) && event.kind === 'opened',
  )
  if (!opened) throw new Error('a batch log without its opening entry')
  const header = opened.body
  const plan = planBatch(header)
  if (!plan.ok) throw new Error(`a batch whose formula cannot be planned: ${plan.refusal.code}`)
  return {
    stream: opened.stream,
    header,
    plan: plan.value,
    stage: 'in-hand',
    openedAtMs: msOf(opened.at),
    person: header.people.performs.id,
    totalUg: plan.value.totalUg,
    totalWas: [],
    heldBackUg: plan.value.heldBackUg,
    steps: new Map(plan.value.steps.map((step) => [step.id, freshStep(step.id, step.targetUg)])),
    vessels: new Map(
      [...plan.value.vessels.values()].map((vessel) => [vessel.id, freshVessel(vessel.id, vessel.tareUg)]),
    ),
    ledger: openLedger(),
    timers: new Map(),
    deviations: new Map(),
    entries: [],
    unplanned: new Map(),
    measurements: [],
    instruments: [],
    preflight: [],
    parts: [],
    lotsOfLine: new Map(header.lots.map((each) => [each.line, each.lots.map((lot) => lot.id)])),
    usedByLot: new Map(),
    doubts: [],
    unknownKinds: new Set(),
    forked: false,
    lastAtMs: msOf(opened.at),
    lastLamport: 0,
    lastHash: null,
    nextOf: new Map(),
  }
}
