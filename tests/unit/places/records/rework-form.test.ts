import { describe, expect, test } from 'vitest'
import { decide } from '../../../../src/batch/decide.ts'
import { createReworkForm } from '../../../../src/places/records/rework-form.ts'
import { demonstrationBatches } from '../../../house/demonstration/files.ts'

const held = demonstrationBatches().find(({ state }) => state.header.code === 'QW-LOT-01-012')

function formOf() {
  if (!held) throw new Error('no batch on hold')
  return createReworkForm(held.state, new Map(held.state.header.materials.map((each) => [each.id, each])))
}

describe('a rework in the making', () => {
  test('[K13] offers what the batch has, and empties all that was filled back', () => {
    const { choices, whole } = formOf()
    expect(choices.vessels.map(({ value }) => value)).toEqual(['main'])
    expect(choices.adjustments.map(({ label }) => label)).toEqual(['pH with Lactic acid 10 %'])
    expect(whole.value).toMatchObject({ back: 'yes', vessel: 'main', mass: '407.02' })
  })

  test('[K13] what is missing is told at its field, one after the other', () => {
    const form = formOf()
    const told = (item: string, field: string, code: string) => {
      expect(form.read()).toBeNull()
      expect(form.problem.value).toMatchObject({ item, field, refusal: { code } })
    }
    told('', 'reason', 'REWORK_REASON_MISSING')
    form.setWhole('reason', 'too thin')
    form.setWhole('mass', 'all')
    told('', 'mass', 'NUMBER_LETTERS')
    form.setWhole('back', 'no')
    told('', 'steps', 'REWORK_STEPS_MISSING')
    form.add('add')
    told('step 1', 'name', 'REWORK_MATERIAL_MISSING')
    form.set('step 1', 'what', 'line sclerotium-gum')
    told('step 1', 'mass', 'NUMBER_EMPTY')
    form.set('step 1', 'mass', '1,5')
    form.add('mix')
    told('step 2', 'minutes', 'NUMBER_EMPTY')
    form.remove('step 2')
    expect(form.read()?.steps).toHaveLength(1)
  })

  test('[K13] whatever kinds are chosen with their figures, the batch takes them', () => {
    const form = formOf()
    form.setWhole('reason', 'too thin')
    const texts: Record<string, Record<string, string>> = {
      add: { what: 'line sclerotium-gum', mass: '1.5' },
      mix: { minutes: '10', rpm: '300' },
      heat: { targetC: '40' },
      cool: { targetC: '25' },
      hold: { minutes: '20' },
      rest: { hours: '24' },
      note: { text: 'Sieve it' },
    }
    for (const kind of ['add', 'mix', 'adjust', 'heat', 'cool', 'hold', 'measure', 'rest', 'fill', 'note'] as const) {
      form.add(kind)
      const key = form.items.value.at(-1)?.key ?? ''
      for (const [field, text] of Object.entries(texts[kind] ?? {})) form.set(key, field, text)
    }
    const intention = form.read()
    if (!intention || !held) throw new Error(`refused: ${JSON.stringify(form.problem.value)}`)
    let id = 0
    const context = { nowMs: Date.UTC(2026, 10, 24, 12), by: 'person-rk', newId: () => `id-${id++}` }
    expect(decide(held.state, intention, context)).toMatchObject({ ok: true })
    expect(intention.returned).toEqual({ vessel: 'main', massUg: 407_020_000 })
  })
})
