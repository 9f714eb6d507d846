import { describe, expect, test } from 'vitest'
import { recordOf } from '../../../../src/batch/record.ts'
import { type Finding, findingsOf } from '../../../../src/batch/record-review.ts'
import { forkOf, grams, openTestBench, type TestBench } from '../../../support/batch.ts'
import { lotionHeader, withLots } from '../../../support/formulas.ts'
import { gum, lotionClosed, openRework } from '../../../support/rework.ts'
import { doStep, runUpTo } from '../../../support/run.ts'
import { wholeBatch } from '../../../support/whole-batch.ts'

const findings = (bench: Pick<TestBench, 'state'>): readonly Finding[] => findingsOf(recordOf(bench.state))

const kinds = (all: readonly Finding[]): readonly string[] =>
  all.map((finding) => (finding.kind === 'entry' ? finding.what : finding.kind))

describe("[E72] a reviewer's view", () => {
  test('has nothing where a batch was made as it was meant', () => {
    const bench = openTestBench(lotionHeader())
    runUpTo(bench)
    expect(findings(bench)).toEqual([])
  })

  test('has deviations, gates, timers and strike-outs, what weighs most first, each with its place', () => {
    const all = findings(wholeBatch({ viscosity: 5_000 }))
    expect(kinds(all)).toEqual(['deviation', 'deviation', 'result', 'gate', 'timer', 'struck'])
    for (const { at } of all) expect(at).toMatch(/^entry-./)
    expect(all.find(({ kind }) => kind === 'result')).toMatchObject({ result: { verdict: 'under' } })
  })

  test('has a lot that was past its day when it was taken from, and only then', () => {
    const expiring = (expires: string) => {
      const header = withLots(lotionHeader(), 'squalane', (lots) => lots.map((lot) => ({ ...lot, expires })))
      const bench = openTestBench({ ...header, kept: [] })
      runUpTo(bench, 'b-squalane')
      if (expires < '2026-11-24') bench.pass('b-squalane', 'LOT_EXPIRED:lot-sq-115')
      doStep(bench, 'b-squalane')
      return findings(bench).filter(({ kind }) => kind === 'lot')
    }
    expect(expiring('2026-11-23')).toMatchObject([{ why: 'expired', at: expect.stringMatching(/^lot-/) }])
    expect(expiring('2026-11-24')).toEqual([])
  })

  test('has checks that nobody read, once the batch is closed', () => {
    const bench = openTestBench(lotionHeader())
    runUpTo(bench, 'rest')
    expect(kinds(findings(bench))).not.toContain('missing')
    bench.intend({ do: 'close', decision: 'hold', note: 'the jars rest' })
    expect(kinds(findings(bench)).filter((kind) => kind === 'missing')).toHaveLength(4)
  })

  test('has late entries, a clock that was moved, and what was not in the plan', () => {
    const bench = openTestBench(lotionHeader())
    runUpTo(bench, 'b-squalane')
    bench.intend({ do: 'notice-clock', byMs: -3_600_000 })
    bench.intend({
      do: 'add-unplanned',
      name: 'Allantoin',
      vessel: 'oil',
      netUg: 100_000,
      reason: 'left over',
    })
    bench.wait(30)
    bench.intend({
      do: 'measure',
      result: { property: 'appearance', label: 'Appearance', text: 'white', good: true },
      late: { occurredAt: bench.events.at(-1)?.at ?? '', reason: 'hands were full' },
    })
    expect(kinds(findings(bench))).toEqual(expect.arrayContaining(['not planned', 'late', 'clock']))
  })

  test('has a step that was left out, with its reason, in the making and in a rework', () => {
    const bench = openTestBench(lotionHeader())
    runUpTo(bench, 'b-cetearyl')
    bench.intend({ do: 'skip-step', step: 'b-cetearyl', reason: 'the tub is empty' })
    const skipped = (of: TestBench) => findings(of).filter(({ kind }) => kind === 'skipped')
    expect(skipped(bench)).toMatchObject([{ at: 'done-b-cetearyl', row: { finished: { note: 'the tub is empty' } } }])
    const reworked = lotionClosed()
    const [step = ''] = openRework(reworked, [gum])
    const before = skipped(reworked).length
    reworked.intend({ do: 'skip-step', step, reason: 'thick enough' })
    expect(skipped(reworked).slice(before)).toMatchObject([
      { at: `done-${step}`, row: { finished: { note: 'thick enough' } } },
    ])
  })

  test('has what Start called out and somebody kept', () => {
    const kept = { code: 'LOT_EXPIRED', about: 'squalane', reason: 'tested again, fit for use' }
    const bench = openTestBench({ ...lotionHeader(), kept: [kept] })
    expect(findings(bench)).toEqual([{ kind: 'kept', kept, at: 'equipment' }])
  })

  test('has an instrument that was found not good, and not one that was', () => {
    const bench = openTestBench(lotionHeader())
    const check = {
      kind: 'balance',
      id: 'balance-1',
      name: 'Balance 1',
      referenceUg: grams(100),
      readUg: grams(100),
    } as const
    bench.intend({ do: 'check-instrument', check, good: true })
    expect(findings(bench)).toEqual([])
    bench.intend({ do: 'check-instrument', check: { ...check, readUg: grams('100.4') }, good: false })
    expect(findings(bench)).toMatchObject([{ kind: 'instrument', check: { good: false }, at: 'equipment' }])
  })

  test('has more unexplained than the formula lets pass, and not what it lets pass', () => {
    const missing = (g: number) => {
      const bench = openTestBench(lotionHeader())
      runUpTo(bench, 'fill')
      const tareUg = bench.state.vessels.get('main')?.tareUg ?? 0
      const massUg = bench.massIn('main') - grams(g)
      bench.intend({ do: 'fill', step: 'fill', vessel: 'main', massUg, units: 4, grossAfterUg: tareUg })
      return findings(bench).filter(({ kind }) => kind === 'unexplained')
    }
    // 1 % of 500 g.
    expect(missing(4.9)).toEqual([])
    expect(missing(6)).toEqual([{ kind: 'unexplained', massUg: grams(6), limitUg: grams(5), at: 'mass' }])
  })

  test('has two weighings that did not know of each other', () => {
    const bench = openTestBench(lotionHeader())
    runUpTo(bench, 'b-squalane')
    const other = forkOf(bench.events, 'phone')
    doStep(bench, 'b-squalane')
    doStep(other, 'b-squalane')
    const both = forkOf([...bench.events, ...other.events.slice(bench.events.length - 1)], 'third')
    expect(kinds(findings(both))).toContain('doubt')
  })

  test('has a second check without a signature where others signed', () => {
    const { allSteps, ...record } = recordOf(wholeBatch().state)
    const signed = {
      entry: 'one',
      atMs: 0,
      by: 'RK',
      person: 'RK',
      meaning: 'performed',
      after: { entries: 0, strikes: 0 },
    }
    const with_ = findingsOf({ ...record, allSteps, signatures: [signed] })
    expect(with_.filter(({ kind }) => kind === 'second')).toEqual([
      { kind: 'second', step: 'c-preservative', why: 'not signed', at: 'step-c-preservative' },
    ])
  })
})
