import { describe, expect, test } from 'vitest'
import { madeOtherwise } from '../../../src/batch/as-made'
import type { Lot, Material } from '../../../src/batch/catalogue'
import { consequencesOf } from '../../../src/batch/deviation'
import type { ReworkStep } from '../../../src/batch/intention'
import { nextStep, statusOf } from '../../../src/batch/progress'
import { recordOf } from '../../../src/batch/record'
import { faultInBody } from '../../../src/batch/schemas/sound-body'
import { seal } from '../../../src/batch/seal'
import { advance, tipOf } from '../../../src/batch/tip'
import { weighingOf } from '../../../src/batch/weighing-of'
import { addedInAll, inSink } from '../../../src/trade/ledger'
import { forkOf, grams, openTestBench } from '../../support/batch'
import { formulas, headerFor, withLots } from '../../support/formulas'
import { closedBench, gum, lotionClosed, openRework, preservative, runOut, water } from '../../support/rework'
import { runUpTo } from '../../support/run'

const salt: Material = {
  id: 'salt',
  name: 'Salt',
  inci: [{ name: 'Sodium Chloride', fraction: 1 }],
  function: 'viscosity',
  useLevel: { min: 0, max: 0.005 },
}
const saltLot: Lot = { id: 'lot-salt', materialId: 'salt', code: 'S-1', receivedUg: grams('500'), status: 'released' }

describe('the care that a rework takes over from the formula', () => {
  test('[K10] who checks the line in the formula checks it in the rework', () => {
    const bench = lotionClosed()
    const [step = ''] = openRework(bench, [preservative])
    expect(bench.state.plan.byId.get(step)?.step.secondPerson).toBe(true)
    const reading = { mode: 're-tare', readingUg: grams('0.4') } as const
    bench.read('main', 21)
    expect(bench.refusal({ do: 'weigh', step, reading }).code).toBe('SECOND_PERSON_MISSING')
  })

  test('[K10] a lot past its day, and a vessel too hot for the line, are gates', () => {
    const header = withLots(headerFor(formulas.lotion), 'sclerotium-gum', (lots) =>
      lots.map((lot) => ({ ...lot, expires: '2026-11-24' })),
    )
    const bench = closedBench(header, 'ph-next-day')
    const [first = ''] = openRework(bench, [gum])
    bench.wait(24 * 60)
    const reading = { mode: 're-tare', readingUg: grams('1.5') } as const
    expect(bench.gatesOn({ do: 'weigh', step: first, reading })).toEqual(['LOT_EXPIRED'])
    const warm = lotionClosed()
    const [second = ''] = openRework(warm, [preservative])
    warm.read('main', 75)
    expect(warm.gatesOn({ do: 'weigh', step: second, reading })).toContain('TOO_HOT')
  })

  test('[K10] a material that is not in the formula has its lots, its use level and its place in the record', () => {
    const bench = lotionClosed()
    const foreign: ReworkStep = {
      kind: 'add',
      vessel: 'main',
      name: 'Salt',
      massUg: grams('2'),
      material: salt,
      lots: [saltLot],
    }
    const [step = ''] = openRework(bench, [foreign, water])
    const opening = bench.events.findLast(({ kind }) => kind === 'reworked')
    expect(opening && faultInBody(opening)).toBeNull()
    expect(weighingOf(bench.state, step)).toMatchObject({ targetUg: grams('2'), lots: [saltLot] })
    bench.weigh(step, '4')
    expect(bench.state.usedByLot.get('lot-salt')).toBe(grams('4'))
    const rows = consequencesOf(bench.state, bench.deviation().id)?.rows ?? []
    expect(rows[0]).toMatchObject({ name: 'Salt', high: 0.005, from: 'use level', breaks: true })
    bench.settle('accept')
    runOut(bench)
    const record = recordOf(bench.state)
    expect(record.reworks[0]?.materials[0]).toMatchObject({ name: 'Salt', lots: ['S-1'], asMade: 4 / 434 })
    expect(record.lots.find(({ id }) => id === 'lot-salt')).toBeDefined()
  })

  test('[K9] what is added with what goes back must fit its vessel', () => {
    const bench = lotionClosed()
    const massUg = inSink(bench.state.ledger, 'filled')
    const steps = [{ ...water, massUg: grams('5000') }]
    const refusal = bench.refusal({ do: 'rework', reason: 'x', returned: { vessel: 'main', massUg }, steps })
    expect(refusal).toMatchObject({ code: 'OVER_VESSEL', massUg: massUg + grams('5000') })
  })

  test('[K9] a deviation that was left open when the batch was closed stays left', () => {
    const bench = openTestBench(headerFor(formulas.lotion))
    runUpTo(bench, 'b-squalane')
    bench.weigh('b-squalane', '20')
    const { id } = bench.deviation()
    bench.intend({ do: 'close', decision: 'hold', note: 'left as it is' })
    bench.intend({ do: 'rework', reason: 'to be saved', steps: [{ kind: 'note', vessel: 'main', text: 'Look at it' }] })
    expect(bench.state.deviations.get(id)?.settled).toMatchObject({ how: 'accept' })
    expect(nextStep(bench.state)?.part).toBe(1)
  })
})

test('[F37] what a rework added is among what the next revision may take over', () => {
  const bench = lotionClosed()
  openRework(bench, [{ kind: 'add', vessel: 'main', name: 'Salt', massUg: grams('2'), material: salt }, gum])
  runOut(bench)
  const made = madeOtherwise(bench.state)
  expect(made.find(({ title }) => title === 'Salt')).toMatchObject({
    kind: 'unplanned',
    materialId: 'salt',
    share: 0.004837,
    vessel: 'main',
    reason: 'rework 1',
    beyond: true,
  })
  expect(made.find(({ id }) => id === 'sclerotium-gum')).toMatchObject({ kind: 'share', beyond: true })
})

test('[K10] additions as earlier versions wrote them are in the ledger, and their steps are done', () => {
  const bench = lotionClosed()
  const common = { vessel: 'main', phase: 'Rework 1', kind: 'add' } as const
  const steps = [
    { ...common, id: 'gum-again', line: 'sclerotium-gum', name: 'Sclerotium gum', massUg: grams('1.5') },
    { ...common, id: 'salt', name: 'Salt', massUg: grams('2') },
  ]
  const component = 'unplanned:salt'
  const bodies = [
    { kind: 'reworked', body: { part: 1, reason: 'too thin', steps } },
    {
      kind: 'adjusted',
      body: { step: 'gum-again', line: 'sclerotium-gum', vessel: 'main', netUg: grams('1.5') },
    },
    {
      kind: 'unplanned-added',
      body: { component, step: 'salt', name: 'Salt', vessel: 'main', netUg: grams('2'), reason: 'rework 1' },
    },
  ]
  const [first] = bench.events
  if (!first) throw new Error('no log')
  const { stream, replica, at, by } = first
  let tip = tipOf(bench.events, replica)
  const older = bodies.map((draft) => {
    const event = seal(draft, tip, { stream, replica, id: draft.kind, at, by })
    expect(faultInBody(event)).toBeNull()
    tip = advance(tip, event)
    return event
  })
  const { state } = forkOf([...bench.events, ...older], replica)
  expect(steps.map(({ id }) => statusOf(state, id))).toEqual(['done', 'done'])
  expect(addedInAll(state.ledger)).toBe(addedInAll(bench.state.ledger) + grams('3.5'))
  expect(state.doubts).toEqual([])
  expect(recordOf(state).reworks[0]?.materials).toMatchObject([{ name: 'Sclerotium gum', actualUg: grams('1.5') }])
})
