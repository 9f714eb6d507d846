import { describe, expect, test } from 'vitest'
import { tipFor } from '../../../../src/batch/extend.ts'
import { foldBatch } from '../../../../src/batch/fold.ts'
import { recordOf } from '../../../../src/batch/record.ts'
import { seal } from '../../../../src/batch/seal.ts'
import { verifyTrail } from '../../../../src/batch/verify-trail.ts'
import { demonstrationBatches } from '../../../house/demonstration/files.ts'
import { g } from '../../../house/demonstration/mass.ts'

const batches = demonstrationBatches()

/** The record of the batch with that code. */
function record(code: string) {
  const bench = batches.find(({ state }) => state.header.code === code)
  if (!bench) throw new Error(`no batch ${code}`)
  return { bench, record: recordOf(bench.state) }
}

describe('a batch record', () => {
  test('carries the master formula with its revision and approval, the size, and who opened and closed it', () => {
    const { header, totalUg, opened, closed, people } = record('QW-LOT-01-001').record
    expect(header.revision).toMatchObject({ number: 3, approvedBy: 'MO', approvedAt: '2026-06-02T16:20:00+01:00' })
    expect(totalUg).toBe(g(500))
    expect(opened?.by).toBe('RK')
    expect(closed).toMatchObject({ decision: 'accept', by: 'MO' })
    expect(people).toEqual({ performed: ['RK'], checked: ['JT'] })
  })

  test('names the instruments with what they showed and every vessel with its tare', () => {
    const { equipment } = record('QW-LOT-01-001').record
    expect(equipment.checks.map(({ check }) => check.kind)).toEqual(['balance', 'balance', 'pH meter'])
    expect(equipment.vessels).toContainEqual({
      id: 'main',
      name: 'Main beaker',
      tareUg: g(312.46),
      standsIn: 'propeller',
    })
  })

  test('[L40] what each line ends at as made sums to the whole, and everything put in is somewhere', () => {
    for (const { state } of batches) {
      const { materials, unplanned, mass } = recordOf(state)
      const asMade = [...materials, ...unplanned].reduce((sum, row) => sum + (row.asMade ?? 0), 0)
      expect(asMade, state.header.code).toBeCloseTo(1, 9)
      const sums = mass.reconciliation
      const out = sums.filledUg + sums.sampledUg + sums.evaporatedUg + sums.leftBehindUg + sums.discardedUg
      expect(out + sums.spilledUg + sums.inVesselsUg).toBe(sums.addedUg)
    }
  })

  test('[E40] a struck weighing stays legible in its row with reason, initials and time, and does not count', () => {
    const { materials, deviations } = record('QW-LOT-01-003').record
    const shea = materials.find((row) => row.line === 'shea-butter')
    expect(shea?.weighings).toHaveLength(2)
    expect(shea?.weighings[0]).toMatchObject({ netUg: g(99.8), counts: false })
    expect(shea?.weighings[0]?.struck).toMatchObject({ reason: 'slip of the point', by: 'RK' })
    expect(shea?.actualUg).toBe(shea?.weighings[1]?.netUg)
    expect(deviations[0]?.settled?.how).toBe('struck out')
  })

  test('a deviation is told with what it would have led to then, the way on, the reason and who chose it', () => {
    const [deviation] = record('QW-LOT-01-006').record.deviations
    expect(deviation).toMatchObject({ number: 1, byUg: g(0.41), direction: 'over' })
    expect(deviation?.consequence?.rows[0]).toMatchObject({ line: 'glyceryl-stearate-peg-100', breaks: false })
    expect(deviation?.settled).toMatchObject({ how: 'accept', by: 'RK', totalUg: g(500.41) })
  })

  test('the row of water lists its rinses and its make-up beside what was weighed', () => {
    const water = record('QW-LOT-01-001').record.materials.find((row) => row.line === 'aqua')
    expect(water?.more.map(({ what }) => what)).toEqual(['rinse', 'rinse', 'make-up'])
  })

  test('an addition that was not planned stands in the record with its reason and its share', () => {
    const [row] = record('QW-LOT-01-011').record.unplanned
    expect(row).toMatchObject({ netUg: g(0.35), lot: 'OA-077', reason: 'to see whether it feels drier' })
    expect(row?.asMade).toBeGreaterThan(0)
  })

  test('a gate that was passed and a timer that was cut short are told at their step', () => {
    const hydrate = record('QW-LOT-01-009').record.steps.find(({ planned }) => planned.id === 'a-hydrate')
    expect(hydrate?.gates[0]).toMatchObject({ gate: 'TIMER_RUNNING', reason: 'looked smooth already', by: 'RK' })
    expect(hydrate?.timer?.lateMs).toBeLessThan(0)
  })

  test('while a pH is adjusted only its last reading is held to the limits', () => {
    const { inProcess } = record('QW-LOT-01-001').record.results
    const adjusting = inProcess.filter((row) => row.body.step === 'adjust-ph').map((row) => row.verdict)
    expect(adjusting.at(-1)).toBe('within')
    expect(new Set(adjusting.slice(0, -1))).toEqual(new Set(['none']))
  })

  test('rested results, kept jars and what is still to be read are told apart', () => {
    const { results } = record('QW-LOT-01-009').record
    expect(results.rested.map((row) => row.verdict)).toEqual(['within', 'within', 'within', 'within'])
    expect(results.stability.some((row) => row.verdict === 'under')).toBe(true)
    expect(record('QW-LOT-01-012').record.results.missing.map((check) => check.when)).toContain('after-rest')
  })

  test('[E41] the trail has every entry, a kind of a newer version too', () => {
    const { bench } = record('QW-LOT-01-013')
    const tip = tipFor(bench.state, 'elsewhere')
    const newer = seal({ kind: 'sung-over', body: { tune: 3 } }, tip, {
      stream: bench.state.stream,
      replica: 'elsewhere',
      id: 'id-newer',
      at: '2026-11-24T10:40:00Z',
      by: 'person-rk',
    })
    const shown = recordOf(foldBatch([...bench.events, newer]))
    expect(shown.trail).toHaveLength(bench.events.length + 1)
    expect(shown.trail.at(-1)).toMatchObject({ known: false, by: 'RK' })
    expect(shown.unknownKinds).toEqual(['sung-over'])
  })

  test('[E42] the trail says where it was changed, and where an entry is missing', () => {
    const { events } = record('QW-LOT-01-002').bench
    expect(verifyTrail(events)).toMatchObject({ intact: true, entries: events.length })
    const changed = events.map((event, index) => (index === 20 ? { ...event, by: 'person-mo2' } : event))
    expect(verifyTrail(changed)).toMatchObject({ intact: false, brokenAt: 21, why: 'CHANGED' })
    const missing = events.filter((_event, index) => index !== 20)
    expect(verifyTrail(missing)).toMatchObject({ intact: false, brokenAt: 21, why: 'MISSING_BEFORE' })
  })
})
