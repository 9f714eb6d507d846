import { computed, type ReadonlySignal, signal } from '@preact/signals'
import type { App } from '../../app/app'
import { decide } from '../../batch/decide'
import { brokenIfLeft, type FinishedRow } from '../../batch/deviation'
import { dateIsoOf } from '../../batch/iso-of'
import type { BatchState } from '../../batch/state'
import { whatIf } from '../../batch/what-if'
import { type ReworkChoices, type ReworkStore, reworkChoices } from './rework-choices'
import { draftIn, type ReworkDraft, type ReworkItem, type ReworkKind } from './rework-draft'
import { intentionOf, type ReworkIntention, type ReworkProblem } from './rework-read'

export interface ReworkForm {
  readonly choices: ReworkChoices
  readonly items: ReadonlySignal<readonly ReworkItem[]>
  readonly whole: ReadonlySignal<Readonly<Record<string, string>>>
  readonly problem: ReadonlySignal<ReworkProblem | null>
  /** What the product would be outside of with all that is added; empty while something is missing. */
  readonly breaks: ReadonlySignal<readonly FinishedRow[]>
  /** Something was chosen or typed. */
  readonly isBegun: ReadonlySignal<boolean>
  readonly add: (kind: ReworkKind) => void
  readonly remove: (key: string) => void
  readonly set: (key: string, field: string, text: string) => void
  readonly setWhole: (field: string, text: string) => void
  readonly read: () => ReworkIntention | null
  /** Reads what was chosen before a reload. */
  readonly restore: () => Promise<void>
  readonly forget: () => void
}

type ReworkWorld = Pick<App, 'drafts' | 'clock'> & Omit<ReworkStore, 'todayIso'>

/** A rework in the making: why, what goes back into a vessel, and its steps in order. Kept as typed until it is opened. */
export function createReworkForm(state: BatchState, world: ReworkWorld): ReworkForm {
  const todayIso = dateIsoOf(world.clock.nowMs(), world.clock.offsetMinutes())
  const choices = reworkChoices(state, { ...world, todayIso })
  const draftKey = `rework:${state.header.id}:${state.parts.length + 1}`
  const untouched: ReworkDraft = {
    items: [],
    whole: {
      reason: '',
      back: choices.filledUg > 0 ? 'yes' : 'no',
      vessel: choices.vessels[0]?.value ?? '',
      mass: choices.filledUg > 0 ? String(choices.filledUg / 1e6) : '',
    },
  }
  const draft = signal(untouched)
  const problem = signal<ReworkProblem | null>(null)
  const put = (next: ReworkDraft) => {
    draft.value = next
    problem.value = null
    void world.drafts.write(draftKey, JSON.stringify(next))
  }
  return {
    choices,
    items: computed(() => draft.value.items),
    whole: computed(() => draft.value.whole),
    problem,
    breaks: computed(() => {
      const { intention } = intentionOf(draft.value, choices)
      return intention === null ? [] : brokenBy(state, intention, world.clock.nowMs())
    }),
    isBegun: computed(() => draft.value !== untouched),
    add: (kind) => {
      const { items, whole } = draft.value
      const made = Math.max(0, ...items.map(({ key }) => Number(key.split(' ')[1])))
      put({ items: [...items, { key: `step ${made + 1}`, kind, texts: {} }], whole })
    },
    remove: (key) => put({ ...draft.value, items: draft.value.items.filter((item) => item.key !== key) }),
    set: (key, field, text) => {
      const change = (item: ReworkItem) =>
        item.key === key ? { ...item, texts: { ...item.texts, [field]: text } } : item
      put({ ...draft.value, items: draft.value.items.map(change) })
    },
    setWhole: (field, text) => put({ ...draft.value, whole: { ...draft.value.whole, [field]: text } }),
    read: () => {
      const answer = intentionOf(draft.value, choices)
      problem.value = answer.problem
      return answer.intention
    },
    restore: async () => {
      const kept = draftIn(await world.drafts.read(draftKey))
      if (kept && draft.value === untouched) draft.value = kept
    },
    forget: () => {
      draft.value = untouched
      void world.drafts.write(draftKey, null)
    },
  }
}

/** What limits would be broken if it were all weighed as asked. */
function brokenBy(state: BatchState, intention: ReworkIntention, nowMs: number): readonly FinishedRow[] {
  let ids = 0
  const decision = decide(state, intention, { nowMs, by: state.person, newId: () => `planned-${ids++}` })
  return decision.ok ? brokenIfLeft(whatIf(state, decision.value)) : []
}
