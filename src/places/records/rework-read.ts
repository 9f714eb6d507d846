import type { CheckRefusal } from '../../app/refusals/forms-records'
import type { Intention, ReworkStep } from '../../batch/intention'
import { type NumberRefusal, readDecimal, readMass } from '../../trade/number-text'
import type { Result } from '../../trade/result'
import type { ReworkChoices } from './rework-choices'
import type { ReworkDraft, ReworkItem } from './rework-draft'

/** Where something is wrong; `item` is empty for what is about the whole. */
export interface ReworkProblem {
  readonly item: string
  readonly field: string
  readonly refusal: CheckRefusal | NumberRefusal
}

export type ReworkIntention = Extract<Intention, { do: 'rework' }>

type Answer =
  | { readonly intention: ReworkIntention; readonly problem: null }
  | { readonly intention: null; readonly problem: ReworkProblem }

/** What a draft asks for, or the first thing that it lacks. */
export function intentionOf({ items, whole }: ReworkDraft, choices: ReworkChoices): Answer {
  const found: ReworkProblem[] = []
  const { reason = '', back, vessel = '', mass = '' } = whole
  const note = (item: string, field: string, refusal: ReworkProblem['refusal']) =>
    void found.push({ item, field, refusal })
  if (reason.trim() === '') note('', 'reason', { code: 'REWORK_REASON_MISSING' })
  const returns = back === 'yes' && choices.filledUg > 0
  const massUg = returns ? taken(readMass(mass, plain), (refusal) => note('', 'mass', refusal)) : 0
  const steps = items.map((item) => stepOf(item, vessel, choices, (field, refusal) => note(item.key, field, refusal)))
  if (steps.length === 0) note('', 'steps', { code: 'REWORK_STEPS_MISSING' })
  const [problem] = found
  if (problem) return { intention: null, problem }
  return {
    intention: { do: 'rework', reason, ...(returns ? { returned: { vessel, massUg } } : {}), steps },
    problem: null,
  }
}

const plain = { negative: false, zero: false } as const

/** The value; what is wrong is told, and then nothing of it is used. */
function taken(read: Result<number, NumberRefusal>, wrong: (refusal: NumberRefusal) => void): number {
  if (!read.ok) wrong(read.refusal)
  return read.ok ? read.value : 0
}

function stepOf(
  { kind, texts }: ReworkItem,
  vessel: string,
  choices: ReworkChoices,
  wrong: (field: string, refusal: ReworkProblem['refusal']) => void,
): ReworkStep {
  const text = (field: string): string => (texts[field] ?? '').trim()
  const number = (field: string, options: { negative?: boolean; zero?: boolean } = plain): number =>
    taken(readDecimal(text(field), options), (refusal) => wrong(field, refusal))
  switch (kind) {
    case 'add': {
      const chosen = choices.addable.find(({ value }) => value === text('what'))
      const name = chosen?.name ?? text('name')
      if (name === '') wrong('name', { code: 'REWORK_MATERIAL_MISSING' })
      const massUg = taken(readMass(text('mass'), plain), (refusal) => wrong('mass', refusal))
      const { line, beside } = chosen ?? {}
      return {
        kind,
        vessel,
        name,
        massUg,
        ...(line === undefined ? {} : { line }),
        ...beside,
      }
    }
    case 'mix': {
      const rpm = text('rpm') === '' ? undefined : number('rpm')
      const speed = rpm === undefined ? {} : { rpm: { min: rpm, max: rpm } }
      return { kind, vessel, tool: text('tool') || choices.tools[0] || 'spatula', minutes: number('minutes'), ...speed }
    }
    case 'adjust': {
      const chosen = choices.adjustments.find(({ value }) => value === text('what')) ?? choices.adjustments[0]
      if (chosen === undefined) wrong('what', { code: 'REWORK_MATERIAL_MISSING' })
      const { property, line, check } = chosen?.step ?? { property: 'pH' as const, line: '', check: '' }
      return { kind, vessel, property, line, check }
    }
    case 'heat':
      return { kind, vessel, targetC: number('targetC', {}) }
    case 'cool':
      return { kind, vessel, targetC: number('targetC', {}), by: 'bath' }
    case 'hold':
      return { kind, vessel, minutes: number('minutes') }
    case 'rest':
      return { kind, vessel, hours: number('hours') }
    case 'measure':
      return { kind, vessel, check: text('check') || choices.checks[0]?.value || '' }
    case 'fill':
      return { kind, vessel }
    case 'note': {
      if (text('text') === '') wrong('text', { code: 'NOTE_EMPTY' })
      return { kind, vessel, text: text('text'), title: text('text').slice(0, 60) }
    }
  }
}
