import { describe, expect, it } from 'vitest'
import type { Lot } from '../../../src/batch/catalogue'
import { planBatch } from '../../../src/batch/plan-batch'
import { lotFindings } from '../../../src/batch/preflight-lots'
import { lotionHeader } from '../../support/formulas'

const findingsOf = (over: Partial<Lot>) => {
  const header = lotionHeader()
  const plan = planBatch(header)
  if (!plan.ok) throw new Error('no plan')
  const lines = [...plan.value.lines.values()]
    .filter(({ line }) => line.id === 'aqua')
    .map((planned) => ({ ...planned, lots: planned.lots.map((lot) => ({ ...lot, ...over })) }))
  const onHand = new Map(lines.flatMap(({ lots }) => lots.map(({ id }) => [id, 1e12] as const)))
  return lotFindings(lines, onHand, '2026-06-16').map((finding) => [
    finding.code,
    'daysOver' in finding ? finding.daysOver : null,
  ])
}

describe('lots before the start', () => {
  it('[P20] a lot that is past its day to be tested again is called out from the day after it', () => {
    expect(findingsOf({ expires: '2027-01-01', retestOn: '2026-06-16' })).toEqual([])
    expect(findingsOf({ expires: '2027-01-01', retestOn: '2026-06-14' })).toEqual([['LOT_RETEST', 2]])
    expect(findingsOf({ expires: '2026-06-15', retestOn: '2026-06-14' })).toEqual([['LOT_EXPIRED', 1]])
  })
})
