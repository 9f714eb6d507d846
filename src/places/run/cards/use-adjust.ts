import { useEffect, useLayoutEffect } from 'preact/hooks'
import type { Check } from '../../../batch/formula'
import { unitOf } from '../../../batch/how-read'
import type { Bodies } from '../../../batch/kinds'
import type { KindOf } from '../../../batch/step'
import { focusField } from '../focus-field'
import { lotInUse } from '../weigh-model'
import { useStep } from './use-step'
import { verdictOf } from './verdict'

/** What an adjust card shows: how it goes, a portion on the balance, or a reading. */
export type AdjustView = 'overview' | 'weigh' | 'read'

const firstField: Readonly<Record<Exclude<AdjustView, 'overview'>, string>> = { weigh: 'portion', read: 'value' }

/** Everything that the cards of an adjustment share. `natural` is what is shown until the person asks for another. */
export function useAdjust(step: KindOf<'adjust'>, check: Check, natural: AdjustView) {
  const tools = useStep(step)
  const { run, state, format } = tools
  const planned = state.plan.byId.get(step.id)
  const material = planned?.line?.material
  const stepUg = planned?.line?.balance.stepUg ?? 10_000
  const lotId = lotInUse(state, step.id, run.draft.value)
  const lot = planned?.line?.lots.find(({ id }) => id === lotId)
  const value = tools.number('value', check.property === 'viscosity' ? 'viscosity' : undefined)
  const portion = tools.mass('portion')
  const asked = tools.text('view')
  const view: AdjustView = asked === 'overview' || asked === 'weigh' || asked === 'read' ? asked : natural

  useLayoutEffect(() => {
    if (view !== 'overview') run.activeField.value = firstField[view]
  }, [view])
  useEffect(() => {
    if (view !== 'overview') focusField(firstField[view])
  }, [view])

  const show = (next: AdjustView) => run.type('view', next)

  const addPortion = async () => {
    if (portion.kind !== 'number') return
    const words = `${material?.name ?? 'Portion'} ${format.massWithUnit(portion.value, stepUg)}`
    const lotPart = lotId === undefined ? {} : { lot: lotId }
    if (await run.act({ do: 'adjust', step: step.id, netUg: portion.value, ...lotPart }, words))
      tools.clear('portion', 'view')
  }

  /** Records the value typed; the other fields named are forgotten with it. */
  const addReading = async (more: Partial<Bodies['measured']>, ...recorded: readonly string[]) => {
    if (value.kind !== 'number') return
    const unit = unitOf(check)
    const result = {
      step: step.id,
      check: check.id,
      property: check.property,
      label: check.label,
      value: value.value,
      vessel: tools.vessel,
      ...(check.limits === undefined ? {} : { good: verdictOf(value.value, check.limits) === 'within' }),
      ...(unit === undefined ? {} : { unit }),
      ...(check.basis === undefined ? {} : { basis: check.basis }),
      ...more,
    }
    if (await run.act({ do: 'measure', result }, `${check.label} ${format.number(value.value)}`))
      tools.clear('value', 'view', ...recorded)
  }

  const shown = (massUg: number): string => format.massWithUnit(massUg, stepUg)
  return { ...tools, material, stepUg, lot, lotId, value, portion, view, show, addPortion, addReading, shown }
}

export type AdjustTools = ReturnType<typeof useAdjust>
