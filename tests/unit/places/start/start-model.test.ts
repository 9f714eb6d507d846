import { beforeAll, describe, expect, test } from 'vitest'
import { loadSentences } from '../../../../src/app/refusals.ts'
import type { Check, Formula } from '../../../../src/batch/formula.ts'
import { createStartModel } from '../../../../src/places/start/model.ts'
import { sayRefusal } from '../../../../src/places/start/say.ts'
import { keeping } from '../../../../src/places/start/ways.ts'
import { settle, startApp } from './start-app.ts'

beforeAll(() => loadSentences())

const lotion = 'formula-lotion'
/** Sclerotium gum, lot SG-214, drawn down to less than a batch needs. */
const shortGum = { 'lot-sg-214': 970_000 }

async function started(...house: Parameters<typeof startApp>) {
  const world = startApp(...house)
  const model = createStartModel(world.app, lotion)
  await settle()
  return { ...world, model }
}

const density: Check = {
  id: 'density',
  property: 'density',
  label: 'Density',
  limits: { min: 0.96, max: 0.98 },
  when: 'in-process',
}

const withDensity = (formula: Formula, check = density): Formula => ({
  ...formula,
  revisions: formula.revisions.map((revision) => ({
    ...revision,
    specification: [...revision.specification, check],
  })),
})

const titles = (model: ReturnType<typeof createStartModel>) => model.cards.value.map(({ title }) => title)

async function takeWay(model: ReturnType<typeof createStartModel>, title: string, way: string): Promise<void> {
  const take = model.cards.value.find((card) => card.title === title)?.ways.find(({ label }) => label === way)?.take
  if (!take) throw new Error(`No way "${way}" at "${title}"`)
  model.change(take)
}

describe('setting up a batch', () => {
  test('[P1] the shown targets make the batch size to the microgram, what is held back included', async () => {
    const { model } = await started()
    const plan = model.setUp.value?.plan
    if (!plan?.ok) throw new Error('The demonstration can be planned')
    const total = [...plan.value.lines.values()].reduce((sum, { targetUg }) => sum + targetUg, 0)
    expect(total).toBe(500_000_000)
    expect(plan.value.heldBackUg).toBe(17_500_000)
  })

  test('[P20] expired and short lots are called out, and one tap each puts them right', async () => {
    const { model } = await started(shortGum)
    expect(titles(model)).toEqual(['Not enough Sclerotium gum', 'Tocopherol has expired', 'Too small for Balance 2'])
    await takeWay(model, 'Not enough Sclerotium gum', 'Add SG-221')
    await takeWay(model, 'Tocopherol has expired', 'Use TO-038')
    expect(titles(model)).toEqual(['Too small for Balance 2'])
    const lots = model.setUp.value?.header.lots
    expect(lots?.find(({ line }) => line === 'sclerotium-gum')?.lots.map(({ code }) => code)).toEqual([
      'SG-214',
      'SG-221',
    ])
    expect(lots?.find(({ line }) => line === 'tocopherol')?.lots.map(({ code }) => code)).toEqual(['TO-038'])
  })

  test('[P21] a line too small for its balance is settled by a finer one, a larger batch, or a pre-mix', async () => {
    const { model } = await started()
    const card = model.cards.value.find(({ code }) => code === 'TOO_SMALL')
    expect(card?.ways.map(({ label }) => label)).toEqual(['Use Balance 1', 'Make 1 kg', 'Pre-mix 1 in 10'])
    for (const way of card?.ways ?? []) {
      const { model: other } = await started()
      other.change(way.take)
      expect(titles(other)).not.toContain('Too small for Balance 2')
    }
  })

  test('[P22] a balance is the finest that carries the vessel with what is in it', async () => {
    const { model } = await started()
    const balances = new Map(model.setUp.value?.header.balanceOfLine.map(({ line, balance }) => [line, balance]))
    expect(balances.get('aqua')).toBe('balance-2')
    expect(balances.get('sodium-phytate-50')).toBe('balance-2')
    expect(balances.get('propanediol')).toBe('balance-1')
  })

  test('[P23] a kept vessel without room is called out, with a larger one', async () => {
    const { model } = await started()
    model.change({ size: '700' })
    model.change((choice) => ({
      ...choice,
      vessels: { main: { kept: 'vessel-beaker-600', name: '', tare: '', capacity: '', standsIn: '' } },
    }))
    await takeWay(model, 'Main beaker is too small', 'Use Steel jug 2 L')
    expect(titles(model)).not.toContain('Main beaker is too small')
  })
})

describe('the size field', () => {
  test.each([
    ['abc', '"abc" is not a number'],
    ['1.2.3', 'more than one decimal mark'],
    ['-5', 'below zero'],
    ['0', 'more than zero'],
    ['2000000', 'more than 1000 kg'],
    ['0.01', 'less Sodium phytate 50 % than Balance 1 can show'],
    ['', 'Type a number first'],
  ])(
    '[P24] a size typed as %j gets a sentence, keeps what was typed, and keeps the batch shut',
    async (text, sentence) => {
      const { model } = await started()
      model.change({ size: text })
      const refusal = model.sizeRefusal.value
      expect(refusal && sayRefusal(refusal)).toContain(sentence)
      expect(model.sizeShown.value).toBe(text)
      expect(model.readyToOpen.value).toBe(false)
    },
  )

  test('takes a unit in the text, the unit beside it, and a sum', { timeout: 30_000 }, async () => {
    const { model } = await started()
    model.change({ size: '1,2 kg' })
    expect(model.sizeUg.value).toBe(1_200_000_000)
    model.change({ size: '0.75', unit: 'kg' })
    expect(model.sizeUg.value).toBe(750_000_000)
    model.change({ size: '2*250', unit: 'g' })
    await expect.poll(() => model.sizeUg.value, { timeout: 20_000 }).toBe(500_000_000)
  })

  test.each([
    ['500 mL', 485_000_000],
    ['0,5 L', 485_000_000],
    ['2*250 mL', 485_000_000],
  ])('[P28] %j is what the density in the checks makes it', async (text, sizeUg) => {
    const { model } = await started({}, (formula) => withDensity(formula))
    model.change({ size: text })
    await expect.poll(() => model.sizeUg.value).toBe(sizeUg)
  })

  test('[P28] a volume of a product of unknown density says what is missing', async () => {
    const inOtherUnit = { ...density, unit: 'kg/m³', limits: { min: 960, max: 980 } }
    for (const change of [undefined, (formula: Formula) => withDensity(formula, inOtherUnit)]) {
      const { model } = await started({}, change)
      model.change({ size: '500 mL' })
      await expect.poll(() => model.sizeRefusal.value?.code).toBe('START_DENSITY_UNKNOWN')
      expect(model.readyToOpen.value).toBe(false)
    }
  })
})

describe('opening', () => {
  test('[P25] what is half-chosen survives a reload, and is gone once the batch is open', async () => {
    const { app, model } = await started()
    model.change({ size: '12.', list: ['Bench and vessels clean, labelled, dry'] })
    await settle()
    const again = createStartModel(app, lotion)
    await settle()
    expect(again.sizeShown.value).toBe('12.')
    expect(again.choice.value.list).toHaveLength(1)
  })

  test('[P26] nothing opens while something is to settle; kept with a reason, the record carries it', async () => {
    const { app, model, went } = await started()
    await model.open()
    expect(went).toEqual([])
    for (const card of model.cards.value) model.change(keeping(card.code, card.abouts, 'Trial batch'))
    expect(model.readyToOpen.value).toBe(true)
    await model.open()
    const [to] = went
    if (to?.place !== 'run') throw new Error('It goes to the run')
    const state = (await app.batches.open(to.batch))?.view.value.state
    expect(state?.header.kept.map(({ code }) => code)).toEqual(['LOT_EXPIRED', 'TOO_SMALL'])
    expect(state?.header.code).toBe('QW-LOT-01-001')
    expect(state?.header.shortName).toBe('Lotion 001')
    expect(await app.drafts.read(`start:${lotion}`)).toBeNull()
  })

  test('[P27] tares and instrument checks become entries of the batch, good or not as found', async () => {
    const { app, model, went, alarm } = await started()
    model.change({
      balanceChecks: {
        'balance-1': { reference: '100', read: '100.003' },
        'balance-2': { reference: '1000', read: '1000.09' },
      },
      slope: '93.5',
      buffers: '4,01 7,00',
      alarm: 'heard',
    })
    for (const card of model.cards.value) model.change(keeping(card.code, card.abouts, 'Trial batch'))
    await model.open()
    const [to] = went
    if (to?.place !== 'run') throw new Error('It goes to the run')
    const state = (await app.batches.open(to.batch))?.view.value.state
    expect(state?.instruments.map(({ check, good }) => [check.kind, good])).toEqual([
      ['balance', true],
      ['balance', false],
      ['pH meter', false],
      ['alarm', true],
    ])
    expect(state?.vessels.get('main')?.tareUg).toBe(312_460_000)
    expect(alarm.state).toBe('ready')
  })

  test('a wrong check field keeps the batch shut and says where', async () => {
    const { model } = await started()
    for (const card of model.cards.value) model.change(keeping(card.code, card.abouts, 'Trial batch'))
    model.change({ slope: '9x' })
    expect(model.readyToOpen.value).toBe(false)
    expect(model.wrong.value).toEqual(['the checks'])
  })
})
