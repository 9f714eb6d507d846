import { describe, expect, test } from 'vitest'
import type { Lot, Material } from '../../../../src/batch/catalogue.ts'
import { decide } from '../../../../src/batch/decide.ts'
import { manualClock } from '../../../../src/devices/clock/manual-clock.ts'
import { createReworkForm } from '../../../../src/places/records/rework-form.ts'
import { memoryStore } from '../../../../src/store/memory-store.ts'
import { demonstrationBatches } from '../../../house/demonstration/files.ts'

const held = demonstrationBatches().find(({ state }) => state.header.code === 'QW-LOT-01-012')

const nowMs = Date.UTC(2026, 10, 24, 12)

const oat: Material = { id: 'oat-starch', name: 'Oat starch', inci: [], function: 'thickener' }

const lotOf = (code: string, more: Partial<Lot>): Lot => ({
  id: `lot ${code}`,
  materialId: oat.id,
  code,
  receivedUg: 1e9,
  status: 'released',
  ...more,
})

const lots = [
  lotOf('later', { expires: '2027-06-30' }),
  lotOf('sooner', { expires: '2027-01-31' }),
  lotOf('past', { expires: '2026-11-23' }),
  lotOf('barred', { status: 'quarantine' }),
]

function formOf(drafts = memoryStore('tablet').drafts) {
  if (!held) throw new Error('no batch on hold')
  const materials = [...held.state.header.materials, oat]
  return createReworkForm(held.state, {
    drafts,
    clock: manualClock(nowMs, 60),
    materials: new Map(materials.map((each) => [each.id, each])),
    lots: new Map(lots.map((each) => [each.id, each])),
  })
}

function planned(form: ReturnType<typeof formOf>, what: string, mass: string): void {
  form.setWhole('reason', 'too thin')
  form.add('add')
  const key = form.items.value.at(-1)?.key ?? ''
  form.set(key, 'what', what)
  form.set(key, 'mass', mass)
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
    const context = { nowMs, by: 'person-rk', newId: () => `id-${id++}` }
    expect(decide(held.state, intention, context)).toMatchObject({ ok: true })
    expect(intention.returned).toEqual({ vessel: 'main', massUg: 407_020_000 })
  })

  test('[K13] a material that is not in the formula comes with its lots that may be used, the first to go on top', () => {
    const form = formOf()
    planned(form, 'material oat-starch', '2')
    const [step] = form.read()?.steps ?? []
    expect(step).toMatchObject({ name: 'Oat starch', material: oat })
    expect(step && 'lots' in step && step.lots?.map(({ code }) => code)).toEqual(['sooner', 'later'])
  })

  test('[K15] what was chosen is there after a reload, and gone once it is opened or discarded', async () => {
    const { drafts } = memoryStore('tablet')
    const form = formOf(drafts)
    expect(form.isBegun.value).toBe(false)
    planned(form, 'line sclerotium-gum', '0,5')
    form.setWhole('mass', '400')
    const again = formOf(drafts)
    await again.restore()
    expect(again.isBegun.value).toBe(true)
    expect(again.read()).toEqual(form.read())
    again.add('mix')
    expect(again.items.value.map(({ key }) => key)).toEqual(['step 1', 'step 2'])
    again.forget()
    const third = formOf(drafts)
    await third.restore()
    expect(third.items.value).toEqual([])
    expect(third.whole.value).toMatchObject({ reason: '', mass: '407.02' })
  })

  test('[K15] what is typed while the draft is read stays, and a draft that cannot be read is left', async () => {
    const { drafts } = memoryStore('tablet')
    planned(formOf(drafts), 'line sclerotium-gum', '0.5')
    const form = formOf(drafts)
    const restored = form.restore()
    form.setWhole('reason', 'not even')
    await restored
    expect(form.whole.value.reason).toBe('not even')
    for (const text of ['{', '{"items":[{"key":"step 1","kind":"stew","texts":{}}],"whole":{}}']) {
      await drafts.write([...(await drafts.all('rework:')).keys()][0] ?? '', text)
      const other = formOf(drafts)
      await other.restore()
      expect(other.isBegun.value).toBe(false)
    }
  })

  test('[K16] a limit that the product would be outside of is told before anything is opened', () => {
    const form = formOf()
    planned(form, 'line phenoxyethanol-ehg', '0.1')
    expect(form.breaks.value).toEqual([])
    form.set('step 1', 'mass', '1')
    expect(form.breaks.value.map(({ name, after, high }) => [name, after > high])).toContainEqual([
      'Phenoxyethanol + EHG',
      true,
    ])
    form.set('step 1', 'mass', '')
    expect(form.breaks.value).toEqual([])
  })
})
