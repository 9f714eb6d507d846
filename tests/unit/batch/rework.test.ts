import { describe, expect, test } from 'vitest'
import { foldBatch } from '../../../src/batch/fold'
import type { Intention, ReworkStep } from '../../../src/batch/intention'
import { nextStep, statusOf } from '../../../src/batch/progress'
import { recordOf } from '../../../src/batch/record'
import { faultInBody } from '../../../src/batch/schemas/sound-body'
import { summaryOf } from '../../../src/batch/summary-of'
import { weighingOf } from '../../../src/batch/weighing-of'
import { addedInAll, inSink } from '../../../src/trade/ledger'
import { heldInAll } from '../../../src/trade/ledger-sums'
import { grams, openTestBench, type TestBench } from '../../support/batch'
import { formulas, headerFor } from '../../support/formulas'
import { runUpTo } from '../../support/run'

const sinks = ['evaporated', 'sampled', 'left-behind', 'spilled', 'discarded', 'filled'] as const
const addGum: ReworkStep = {
  kind: 'add',
  vessel: 'main',
  line: 'sclerotium-gum',
  name: 'Sclerotium gum',
  massUg: grams('1.5'),
}
const stir: ReworkStep = { kind: 'mix', vessel: 'main', tool: 'propeller', minutes: 10 }

function closed(decision: 'hold' | 'accept' = 'hold'): TestBench {
  const bench = openTestBench(headerFor(formulas.lotion))
  runUpTo(bench, 'ph-next-day')
  bench.intend({ do: 'close', decision, note: 'checks to come' })
  return bench
}

const rework = (steps: readonly ReworkStep[], more: Partial<Extract<Intention, { do: 'rework' }>> = {}) =>
  ({ do: 'rework', reason: 'too thin', steps, ...more }) as const

const stepsOf = (bench: TestBench): readonly string[] => bench.state.parts.at(-1)?.steps ?? []

describe('a rework', () => {
  test('[K9] opens the batch again with its own steps in order, and leaves what was left', () => {
    const bench = closed()
    const before = bench.state.plan.steps.length
    const [event] = bench.intend(rework([addGum, stir]))
    expect(event && faultInBody(event)).toBeNull()
    expect(bench.state.stage).toBe('in-hand')
    expect(bench.state.decision).toBeUndefined()
    expect(bench.state.plan.steps.slice(before).map(({ step, part }) => [step.kind, part])).toEqual([
      ['weigh', 1],
      ['mix', 1],
    ])
    const [add = '', mix = ''] = stepsOf(bench)
    expect(nextStep(bench.state)?.id).toBe(add)
    expect(bench.gatesOn({ do: 'start-timer', label: 'Mix', minutes: 10, step: mix })).toEqual(['ORDER'])
    expect(bench.state.steps.get('viscosity-next-day')?.finished?.how).toBe('skipped')
  })

  test('[K9] the ledger goes on: what is emptied back is there again, and mass is conserved', () => {
    const bench = closed()
    const filledUg = inSink(bench.state.ledger, 'filled')
    const heldUg = bench.massIn('main')
    bench.intend(rework([addGum], { returned: { vessel: 'main', massUg: filledUg - 1_000_000 } }))
    expect(bench.massIn('main')).toBe(heldUg + filledUg - 1_000_000)
    expect(inSink(bench.state.ledger, 'filled')).toBe(1_000_000)
    bench.weigh(stepsOf(bench)[0] ?? '', '1.5')
    const { ledger } = bench.state
    expect(heldInAll(ledger) + inSink(ledger, ...sinks)).toBe(addedInAll(ledger))
    expect(foldBatch([...bench.events].reverse())).toEqual(bench.state)
  })

  test('[K9] is refused where there is nothing to rework, nothing to do, or no reason', () => {
    const inHand = openTestBench(headerFor(formulas.lotion))
    expect(inHand.refusal(rework([stir])).code).toBe('NOT_CLOSED_YET')
    const bench = closed()
    expect(bench.refusal(rework([])).code).toBe('REWORK_WITHOUT_STEPS')
    expect(bench.refusal(rework([stir], { reason: ' ' })).code).toBe('REASON_MISSING')
    const returned = { vessel: 'main', massUg: inSink(bench.state.ledger, 'filled') + 1 }
    expect(bench.refusal(rework([stir], { returned })).code).toBe('MORE_THAN_HELD')
    bench.intend({ do: 'close', decision: 'reject', note: 'it smells' })
    expect(bench.refusal(rework([stir])).code).toBe('REWORK_OF_REJECTED')
    const given = openTestBench(headerFor(formulas.lotion))
    given.intend({ do: 'abandon', reason: 'spilled' })
    expect(given.refusal(rework([stir])).code).toBe('BATCH_ENDED')
  })

  test.each<[ReworkStep, string]>([
    [{ ...stir, vessel: 'bucket' }, 'UNKNOWN_VESSEL_HERE'],
    [{ ...stir, minutes: 0 }, 'MINUTES_BAD'],
    [{ ...addGum, line: 'sawdust' }, 'UNKNOWN_LINE'],
    [{ ...addGum, massUg: 0 }, 'MASS_NOT_POSITIVE'],
    [{ ...addGum, massUg: 0.5 }, 'MASS_NOT_WHOLE'],
    [{ kind: 'add', vessel: 'main', name: ' ', massUg: 5 }, 'NAME_MISSING'],
    [{ kind: 'measure', vessel: 'main', check: 'colour' }, 'UNKNOWN_CHECK'],
    [{ kind: 'heat', vessel: 'main', targetC: 750 }, 'TEMPERATURE_ABSURD'],
    [{ kind: 'rest', vessel: 'main', hours: 0 }, 'MINUTES_BAD'],
    [{ kind: 'note', vessel: 'main', text: '' }, 'NAME_MISSING'],
  ])('[K9] a step that cannot be is refused: %j', (step, code) => {
    expect(closed().refusal(rework([stir, step])).code).toBe(code)
  })

  test('[K10] an addition is weighed like a line: judged by its band, in the ledger by line and lot', () => {
    const bench = closed()
    bench.intend(rework([addGum, { kind: 'add', vessel: 'main', name: 'Salt', massUg: grams('2') }]))
    const [gum = '', salt = ''] = stepsOf(bench)
    const before = bench.massIn('main')
    const totalUg = bench.state.totalUg
    const lot = bench.state.lotsOfLine.get('sclerotium-gum')?.[0] ?? ''
    const used = bench.state.usedByLot.get(lot) ?? 0
    expect(bench.state.totalWas.at(-1)).toBe(totalUg - grams('3.5'))
    expect(weighingOf(bench.state, gum)).toMatchObject({ targetUg: grams('1.5'), leftUg: grams('1.5'), vessel: 'main' })
    expect(bench.refusal({ do: 'weigh', step: gum, reading: { mode: 're-tare', readingUg: 0 } }).code).toBe(
      'NET_NOT_POSITIVE',
    )
    const reading = { mode: 're-tare', readingUg: grams('2') } as const
    expect(bench.gatesOn({ do: 'weigh', step: salt, reading })).toEqual(['ORDER'])
    bench.weigh(gum, '1')
    expect(statusOf(bench.state, gum)).toBe('part')
    const second = bench.weigh(gum, '0.5')
    expect(statusOf(bench.state, gum)).toBe('done')
    expect(bench.massIn('main')).toBe(before + grams('1.5'))
    expect(bench.state.usedByLot.get(lot)).toBe(used + grams('1.5'))
    expect(bench.refusal({ do: 'weigh', step: gum, reading }).code).toBe('STEP_DONE')
    bench.strike(second)
    bench.weigh(gum, '0.51')
    bench.weigh(salt, '2')
    expect(bench.massIn('main')).toBe(before + grams('3.51'))
    const [record] = recordOf(bench.state).reworks
    expect(
      record?.materials.map(({ name, targetUg, actualUg, verdict }) => [name, targetUg, actualUg, verdict]),
    ).toEqual([
      ['Sclerotium gum', grams('1.5'), grams('1.51'), 'within'],
      ['Salt', grams('2'), grams('2'), 'within'],
    ])
    expect(record?.materials[0]?.weighings.map(({ netUg, struck }) => [netUg, struck !== undefined])).toEqual([
      [grams('1'), false],
      [grams('0.5'), true],
      [grams('0.51'), false],
    ])
    expect(recordOf(bench.state).materials.some(({ step }) => step === gum)).toBe(false)
  })

  test('[K11] checks are due anew after it, and what was read before decides nothing', () => {
    const bench = closed()
    const thin = { check: 'viscosity', property: 'viscosity', label: 'Viscosity', unit: 'mPa·s' } as const
    bench.measure({ ...thin, value: 500 })
    expect(summaryOf(bench.state)).toMatchObject({ outOfLimits: 1 })
    bench.intend(rework([stir]))
    expect(summaryOf(bench.state)).toMatchObject({ checksDue: [], reworks: 1 })
    expect(summaryOf(bench.state).outOfLimits).toBeUndefined()
    const [mix = ''] = stepsOf(bench)
    bench.timer(mix, 10)
    bench.wait(10)
    bench.finish(mix)
    const doneAtMs = bench.nowMs
    bench.intend({ do: 'close', decision: 'hold' })
    const due = summaryOf(bench.state).checksDue
    expect(due.map(({ check }) => check)).toContain('viscosity')
    expect(due.every(({ dueAtMs }) => dueAtMs === doneAtMs + 24 * 3_600_000)).toBe(true)
    expect(recordOf(bench.state).results.missing.map(({ id }) => id)).toContain('viscosity')
    bench.wait(24 * 60)
    bench.measure({ ...thin, value: 11_000 })
    expect(summaryOf(bench.state).checksDue.map(({ check }) => check)).not.toContain('viscosity')
    expect(recordOf(bench.state).results.rested.map(({ body, part }) => [body.value, part])).toEqual([
      [500, 0],
      [11_000, 1],
    ])
  })

  test('[K11] the record shows its steps apart from those of the formula, and says when it is open', () => {
    const bench = closed()
    bench.intend(rework([stir]))
    const record = recordOf(bench.state)
    expect(record.closed).toBeNull()
    expect(record.steps.some(({ planned }) => planned.part !== undefined)).toBe(false)
    expect(record.reworks).toMatchObject([{ part: 1, reason: 'too thin', by: 'RK', steps: [{ planned: { part: 1 } }] }])
    bench.intend({ do: 'close', decision: 'accept', note: 'left as it is' })
    bench.intend(rework([stir], { reason: 'still thin' }))
    expect(recordOf(bench.state).reworks.map(({ part, steps }) => [part, steps.length])).toEqual([
      [1, 1],
      [2, 1],
    ])
  })
})

describe('deciding again', () => {
  const measureAll = (bench: TestBench, viscosity: number) =>
    bench.intend({
      do: 'measure-all',
      results: [
        { check: 'ph-rested', property: 'pH', label: 'pH', value: 5.1 },
        { check: 'viscosity', property: 'viscosity', label: 'Viscosity', unit: 'mPa·s', value: viscosity },
        { check: 'appearance', property: 'appearance', label: 'Appearance', text: 'even', good: true },
        { check: 'odour', property: 'odour', label: 'Odour', text: 'oats', good: true },
      ],
    })

  test('[K12] with everything within limits it is accepted without a word', () => {
    const bench = closed()
    measureAll(bench, 11_000)
    bench.intend({ do: 'close', decision: 'accept' })
    expect(bench.state.decision?.decision).toBe('accept')
    expect(bench.refusal({ do: 'close', decision: 'accept', note: 'x' }).code).toBe('DECIDED_ALREADY')
  })

  test('[K12] in spite of a result, with one missing, to reject and to take back it needs a reason', () => {
    const bench = closed()
    expect(bench.refusal({ do: 'close', decision: 'accept' }).code).toBe('REASON_MISSING')
    measureAll(bench, 500)
    expect(bench.refusal({ do: 'close', decision: 'accept' }).code).toBe('REASON_MISSING')
    expect(bench.refusal({ do: 'close', decision: 'reject', note: ' ' }).code).toBe('REASON_MISSING')
    bench.intend({ do: 'close', decision: 'reject', note: 'far too thin' })
    expect(bench.refusal({ do: 'close', decision: 'hold' }).code).toBe('REASON_MISSING')
    bench.intend({ do: 'close', decision: 'hold', note: 'read it again' })
    expect(recordOf(bench.state).decisions.map(({ decision, note }) => [decision, note])).toEqual([
      ['hold', 'checks to come'],
      ['reject', 'far too thin'],
      ['hold', 'read it again'],
    ])
  })

  test('[K12] a signature under it covers the decision, and one given for an older batch does not', () => {
    const bench = closed()
    const by = [{ person: 'person-mo', meaning: 'reviewed and decided', how: 'name' as const }]
    const stale = { by, seen: 'another' }
    expect(bench.refusal({ do: 'close', decision: 'reject', note: 'x', signatures: stale }).code).toBe(
      'CHANGED_MEANWHILE',
    )
    const seen = bench.state.lastHash
    const written = bench.intend({ do: 'close', decision: 'reject', note: 'x', signatures: { by, seen } })
    expect(written.map(({ kind }) => kind)).toEqual(['closed', 'signed'])
    expect(recordOf(bench.state).signatures.at(-1)).toMatchObject({ meaning: 'reviewed and decided' })
  })
})
