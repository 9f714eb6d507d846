import { describe, expect, it } from 'vitest'
import type { Line, Revision } from '../../../../src/batch/formula'
import { checkRevision, fractionsOf } from '../../../../src/batch/schemas/check-revision'
import type { Step } from '../../../../src/batch/step'

const line = (id: string, amount: Line['amount'], more: Partial<Line> = {}): Line => ({
  id,
  materialId: id,
  amount,
  ...more,
})
const share = (id: string, fraction: number, more: Partial<Line> = {}) => line(id, { kind: 'fraction', fraction }, more)
const weigh = (id: string): Step => ({ id: `weigh-${id}`, kind: 'weigh', line: id, vessel: 'main', phase: 'A' })

const revision = (lines: Line[], procedure: Step[] = lines.map(({ id }) => weigh(id))): Revision => ({
  number: 1,
  usualSizeUg: 500_000_000,
  phases: [{ letter: 'A', name: 'Water', lines }],
  procedure,
  specification: [],
  vessels: [
    { id: 'main', name: 'Main', kind: 'vessel' },
    { id: 'side', name: 'Side', kind: 'vessel' },
  ],
  preflight: [],
})

const codes = (of: Revision) => checkRevision(of, (id) => (id === 'unknown' ? null : id)).map(({ code }) => code)
const qs = (portions: Extract<Line['amount'], { kind: 'qs' }>['portions'], heldBack?: number): Line =>
  line('water', { kind: 'qs', portions, ...(heldBack === undefined ? {} : { heldBack }) })
const rest = { step: 'weigh-water', rest: true } as const

describe('what keeps a revision from being weighed', () => {
  it('[I33] nothing stands against a sound one', () => {
    expect(codes(revision([qs([rest], 0.03), share('oat', 0.01)]))).toEqual([])
    expect(codes(revision([share('a', 0.1), share('b', 0.2), share('c', 0.7)]))).toEqual([])
  })

  it('[I33] sums that are off, however little, are said', () => {
    expect(codes(revision([share('a', 0.5), share('b', 0.4999)]))).toEqual(['FORMULA_NOT_WHOLE'])
    expect(codes(revision([qs([rest]), share('b', 1)]))).toEqual(['FORMULA_QS_NEGATIVE'])
    expect(codes(revision([qs([rest]), { ...qs([rest]), id: 'more' }]))).toEqual(['FORMULA_TWO_QS'])
  })

  it('[I33] portions and what is held back must fit into the q.s. line', () => {
    const tight = [qs([rest, { step: 'other', fraction: 0.5 }], 0.1), share('oat', 0.45)]
    expect(codes(revision(tight))).toEqual(['FORMULA_QS_TOO_SMALL'])
    const twoRests = [qs([rest, { step: 'other', rest: true }]), share('oat', 0.45)]
    expect(codes(revision(twoRests))).toEqual(['FORMULA_QS_TWO_RESTS'])
  })

  it('[I33] a line without a step, with two, out of its range or of an unknown material is named', () => {
    const base = qs([rest])
    expect(codes(revision([base, share('oat', 0.01)], [weigh('water')]))).toEqual(['LINE_NOT_WEIGHED'])
    const twice = [weigh('water'), weigh('oat'), { ...weigh('oat'), id: 'again' }]
    expect(codes(revision([base, share('oat', 0.01)], twice))).toEqual(['LINE_WEIGHED_TWICE'])
    expect(codes(revision([base, share('oat', 0.01, { range: { min: 0.02, max: 0.03 } })]))).toEqual([
      'LINE_OUT_OF_RANGE',
    ])
    expect(codes(revision([base, share('unknown', 0.01)]))).toEqual(['LINE_MATERIAL_UNKNOWN'])
    const acid = line('acid', { kind: 'as-needed', expected: 0.02, min: 0, max: 0.01 })
    expect(codes(revision([base, acid], [weigh('water')]))).toEqual(['LINE_EXPECTED_OUT', 'LINE_NOT_ADJUSTED'])
  })

  it('[I33] a step that names what is not there, or goes into itself, is named by its number', () => {
    const base = [qs([rest])]
    const step = (over: object): Step =>
      ({ id: 's', kind: 'hold', minutes: 1, vessel: 'main', phase: 'A', ...over }) as Step
    expect(codes(revision(base, [weigh('water'), step({ vessel: 'gone' })]))).toEqual(['STEP_VESSEL_MISSING'])
    expect(codes(revision(base, [weigh('water'), step({ kind: 'measure', check: 'pH' })]))).toEqual([
      'STEP_CHECK_MISSING',
    ])
    expect(codes(revision(base, [weigh('water'), step({ kind: 'make-up', line: 'gone' })]))).toEqual([
      'STEP_LINE_MISSING',
    ])
    expect(codes(revision(base, [weigh('water'), step({ after: ['gone'] })]))).toEqual(['STEP_AFTER_MISSING'])
    expect(codes(revision(base, [weigh('water'), step({ kind: 'combine', from: 'main' })]))).toEqual([
      'STEP_INTO_ITSELF',
    ])
  })

  it('[I33] steps that wait for each other are found, also through the order of a vessel', () => {
    const base = [qs([rest])]
    const first: Step = { id: 'x', kind: 'hold', minutes: 1, vessel: 'side', phase: 'A', after: ['y'] }
    const second: Step = { id: 'y', kind: 'hold', minutes: 1, vessel: 'side', phase: 'A' }
    expect(codes(revision(base, [weigh('water'), first, second]))).toEqual(['STEP_AFTER_LOOP', 'STEP_AFTER_LOOP'])
  })

  it('decimal shares add up as they were typed', () => {
    expect(fractionsOf([share('a', 0.1), share('b', 0.2)])).toEqual({ stated: 0.3, qs: null })
    expect(fractionsOf([qs([rest]), share('b', 0.1), share('c', 0.2)])).toEqual({ stated: 0.3, qs: 0.7 })
  })
})
