import { type ReadonlySignal, signal } from '@preact/signals'
import type { CheckRefusal } from '../../app/refusals/forms-records'
import type { Material } from '../../batch/catalogue'
import type { Intention, ReworkStep } from '../../batch/intention'
import type { BatchState } from '../../batch/state'
import { inSink } from '../../trade/ledger'
import { type NumberRefusal, readDecimal, readMass } from '../../trade/number-text'
import type { Result } from '../../trade/result'
import { type ReworkChoices, reworkChoices } from './rework-choices'

export const reworkKinds = ['add', 'mix', 'adjust', 'heat', 'cool', 'hold', 'measure', 'rest', 'fill', 'note'] as const
export type ReworkKind = (typeof reworkKinds)[number]

/** One step in the making. Everything is text, so that nothing typed is lost. */
export interface ReworkItem {
  readonly key: string
  readonly kind: ReworkKind
  readonly texts: Readonly<Record<string, string>>
}

/** Where something is wrong; `item` is empty for what is about the whole. */
export interface ReworkProblem {
  readonly item: string
  readonly field: string
  readonly refusal: CheckRefusal | NumberRefusal
}

export interface ReworkForm {
  readonly choices: ReworkChoices
  readonly items: ReadonlySignal<readonly ReworkItem[]>
  readonly whole: ReadonlySignal<Readonly<Record<string, string>>>
  readonly problem: ReadonlySignal<ReworkProblem | null>
  readonly add: (kind: ReworkKind) => void
  readonly remove: (key: string) => void
  readonly set: (key: string, field: string, text: string) => void
  readonly setWhole: (field: string, text: string) => void
  readonly read: () => Extract<Intention, { do: 'rework' }> | null
}

/** A rework in the making: why, what goes back into a vessel, and its steps in order. */
export function createReworkForm(state: BatchState, materials: ReadonlyMap<string, Material>): ReworkForm {
  const choices = reworkChoices(state, materials)
  const items = signal<readonly ReworkItem[]>([])
  const whole = signal<Readonly<Record<string, string>>>({
    reason: '',
    back: choices.filledUg > 0 ? 'yes' : 'no',
    vessel: choices.vessels[0]?.value ?? '',
    mass: choices.filledUg > 0 ? String(choices.filledUg / 1e6) : '',
  })
  const problem = signal<ReworkProblem | null>(null)
  let made = 0
  return {
    choices,
    items,
    whole,
    problem,
    add: (kind) => {
      made += 1
      items.value = [...items.value, { key: `step ${made}`, kind, texts: {} }]
      problem.value = null
    },
    remove: (key) => {
      items.value = items.value.filter((item) => item.key !== key)
      problem.value = null
    },
    set: (key, field, text) => {
      items.value = items.value.map((item) =>
        item.key === key ? { ...item, texts: { ...item.texts, [field]: text } } : item,
      )
      problem.value = null
    },
    setWhole: (field, text) => {
      whole.value = { ...whole.value, [field]: text }
      problem.value = null
    },
    read: () => {
      const found: ReworkProblem[] = []
      const { reason = '', back, vessel = '', mass = '' } = whole.value
      const note = (item: string, field: string, refusal: ReworkProblem['refusal']) =>
        void found.push({ item, field, refusal })
      if (reason.trim() === '') note('', 'reason', { code: 'REWORK_REASON_MISSING' })
      const returns = back === 'yes' && inSink(state.ledger, 'filled') > 0
      const massUg = returns ? taken(readMass(mass, plain), (refusal) => note('', 'mass', refusal)) : 0
      const steps = items.value.map((item) =>
        stepOf(item, vessel, choices, (field, refusal) => note(item.key, field, refusal)),
      )
      if (steps.length === 0) note('', 'steps', { code: 'REWORK_STEPS_MISSING' })
      problem.value = found[0] ?? null
      if (found.length > 0) return null
      return { do: 'rework', reason, ...(returns ? { returned: { vessel, massUg } } : {}), steps }
    },
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
      const { line, materialId } = chosen ?? {}
      return {
        kind,
        vessel,
        name,
        massUg,
        ...(line === undefined ? {} : { line }),
        ...(materialId === undefined ? {} : { materialId }),
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
