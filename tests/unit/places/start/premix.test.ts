import { describe, expect, test } from 'vitest'
import { summaryOf } from '../../../../src/batch/summary-of.ts'
import { createStartModel } from '../../../../src/places/start/model.ts'
import { keeping, withPremix } from '../../../../src/places/start/ways.ts'
import { inciParts } from '../../../support/label.ts'
import { settle, startApp } from './start-app.ts'

const line = 'sodium-phytate-50'

async function opened() {
  const world = startApp()
  const model = createStartModel(world.app, 'formula-lotion')
  await settle()
  const way = model.cards.value.flatMap(({ ways }) => ways).find(({ label }) => label === 'Pre-mix 1 in 10')
  if (!way) throw new Error('A pre-mix is offered')
  const before = model.setUp.value
  model.change(way.take)
  for (const card of model.cards.value) model.change(keeping(card.code, card.abouts, 'Trial batch'))
  return { ...world, model, before }
}

describe('a batch weighed with a pre-mix', () => {
  test('[F25] weighs the dilution, takes it off its carrier, says how it is made, and is the same product', async () => {
    const { model, before } = await opened()
    const setUp = model.setUp.value
    if (!setUp?.plan.ok || !before?.plan.ok) throw new Error('Both can be planned')
    const [was, is] = [before.plan.value.lines, setUp.plan.value.lines]
    expect([was.get(line)?.targetUg, is.get(line)?.targetUg]).toEqual([1_000_000, 10_000_000])
    expect((was.get('aqua')?.targetUg ?? 0) - (is.get('aqua')?.targetUg ?? 0)).toBe(9_000_000)
    expect([...is.values()].reduce((sum, { targetUg }) => sum + targetUg, 0)).toBe(500_000_000)
    const note = setUp.plan.value.steps.find(({ step }) => step.kind === 'note' && step.title === 'Make the pre-mix')
    expect(note?.step).toMatchObject({
      text: expect.stringContaining('2.00 g Sodium phytate 50 % and 18.00 g Water, purified. '),
    })
    expect(setUp.plan.value.steps.find(({ step }) => step.kind === 'weigh' && step.line === line)?.waitsFor).toContain(
      note?.id,
    )
    const materials = [...is.values()].map(({ material, fraction }) => ({ material, share: fraction }))
    const neat = [...was.values()].map(({ material, fraction }) => ({ material, share: fraction }))
    for (const [name, fraction] of inciParts(materials)) expect(fraction).toBeCloseTo(inciParts(neat).get(name) ?? 0, 9)
    expect(setUp.header.kept).toContainEqual({
      code: 'PRE_MIXED',
      about: line,
      reason: expect.stringContaining('1 in 10'),
    })
    model.change(withPremix(line, null))
    expect(model.setUp.value?.header.premixes).toBeUndefined()
  })

  test('[F26] its lot names what it was made of, and the store gives the whole of that, once', async () => {
    const { app, model, went } = await opened()
    await model.open()
    const [to] = went
    if (to?.place !== 'run') throw new Error('It goes to the run')
    const handle = await app.batches.open(to.batch)
    if (!handle) throw new Error('It is there')
    const lot = handle.view.value.state.header.lots.find((each) => each.line === line)?.lots[0]
    expect(lot?.code).toBe('SP-048 1 in 10 in W-0831')
    const steps = handle.view.value.state.plan.steps
    const note = steps.find(({ step }) => step.title === 'Make the pre-mix')
    const weigh = steps.find(({ step }) => step.kind === 'weigh' && step.line === line)
    const weighed = async () =>
      handle.intend({ do: 'weigh', step: weigh?.id ?? '', reading: { mode: 're-tare', readingUg: 5_000_000 } })
    expect(await weighed()).toMatchObject({ ok: false, refusal: { code: 'GATE' } })
    expect(await handle.intend({ do: 'finish-step', step: note?.id ?? '' })).toMatchObject({ ok: true })
    await handle.intend({ do: 'tare', vessel: 'main', tareUg: 300_000_000 })
    expect(await weighed()).toMatchObject({ ok: true })
    expect(await weighed()).toMatchObject({ ok: true })
    const used = new Map(summaryOf(handle.view.value.state).usedByLot.map((each) => [each.lot, each.massUg]))
    expect(used).toEqual(
      new Map([
        ['lot-sp-048', 2_000_000],
        ['lot-w-0831', 18_000_000],
      ]),
    )
  })
})
