import { describe, expect, test } from 'vitest'
import { backupSight } from '../../../../src/app/backup/backup-due.ts'
import type { Balance } from '../../../../src/batch/catalogue.ts'
import type { BatchSummary } from '../../../../src/batch/summary.ts'
import { checksToday } from '../../../../src/places/bench/checks.ts'
import { benchCards, callName } from '../../../../src/places/bench/order.ts'

const hourMs = 3_600_000
const nowMs = 100 * hourMs

const summary = (id: string, more: Partial<BatchSummary> = {}): BatchSummary => ({
  id,
  code: id,
  shortName: 'Lotion 041',
  formulaId: 'f',
  formulaName: 'Oat barrier body lotion',
  revision: 3,
  totalUg: 500_000_000,
  stage: 'in-hand',
  openedAtMs: 0,
  touchedAtMs: 0,
  person: 'p',
  done: 1,
  steps: 9,
  cup: { strata: [], targetUg: 1 },
  timers: [],
  checksDue: [],
  openDeviations: 0,
  deviations: 0,
  doubts: 0,
  usedByLot: [],
  ...more,
})

const timer = (deadlineAtMs: number) => ({ id: `t${deadlineAtMs}`, label: 'hydrate', deadlineAtMs })

describe('the batches in hand', () => {
  test('stand in order of urgency: ringing, overdue, nearest timer, last touched, parked', () => {
    const cards = benchCards(
      [
        summary('parked', { stage: 'parked', touchedAtMs: 99 }),
        summary('older', { touchedAtMs: 1 }),
        summary('newer', { touchedAtMs: 2 }),
        summary('far', { timers: [timer(nowMs + 9)] }),
        summary('near', { timers: [timer(nowMs + 5), timer(nowMs + 50)] }),
        summary('overdue', { checksDue: [{ check: 'v', label: 'viscosity', dueAtMs: nowMs - 1 }] }),
        summary('rings', { timers: [timer(nowMs - 2), timer(nowMs + 1)] }),
        summary('rings longest', { timers: [timer(nowMs - 3)] }),
      ],
      nowMs,
    )
    expect(cards.map(({ batch }) => batch.id)).toEqual([
      'rings longest',
      'rings',
      'overdue',
      'near',
      'far',
      'newer',
      'older',
      'parked',
    ])
    expect(cards[1]?.ringing).toHaveLength(1)
    expect(cards[3]?.moreTimers).toBe(1)
  })

  test('a batch is called by its kind, and by its number where there are two of a kind', () => {
    const gel = summary('g', { shortName: 'Gel 017' })
    const lotion = summary('a')
    expect(callName(gel, [gel, lotion])).toBe('gel')
    expect(callName(lotion, [lotion, summary('b', { shortName: 'Lotion 042' })])).toBe('lotion 041')
  })
})

describe('checks today', () => {
  const balance: Balance = {
    id: 'b1',
    name: 'Balance 1',
    stepUg: 1000,
    capacityUg: 1,
    repeatabilityUg: 1,
    checkEveryHours: 24,
  }
  const input = {
    batches: [],
    balances: [],
    hasWork: true,
    backup: backupSight({ lastBackupAt: new Date(nowMs).toISOString() }, null, nowMs),
    nowMs,
    dayEndsMs: nowMs + 5 * hourMs,
  }
  const due = (dueAtMs: number, label = 'viscosity') => ({ check: label, label, dueAtMs })

  test('what is due now comes before what is due later today; tomorrow is left out', () => {
    const batches = [
      summary('later', { checksDue: [due(nowMs + hourMs)] }),
      summary('now', { checksDue: [due(nowMs - hourMs, 'pH'), due(nowMs - hourMs)] }),
      summary('tomorrow', { checksDue: [due(nowMs + 9 * hourMs)] }),
    ]
    const checks = checksToday({ ...input, batches })
    expect(
      checks.map((check) => (check.kind === 'batch' ? [check.batch.id, check.labels, check.due] : check.kind)),
    ).toEqual([
      ['now', ['pH', 'viscosity'], true],
      ['later', ['viscosity'], false],
    ])
  })

  test('a balance is due so many hours after its last good check, in whichever batch that was', () => {
    const checkedAt = (atMs: number) => [summary('a', { balanceChecks: [{ balance: 'b1', atMs }] })]
    const dueOf = (batches: readonly BatchSummary[]) =>
      checksToday({ ...input, balances: [balance], batches }).map(({ due: isDue }) => isDue)
    expect(dueOf(checkedAt(nowMs - 23 * hourMs))).toEqual([])
    expect(dueOf(checkedAt(nowMs - 25 * hourMs))).toEqual([true])
    expect(dueOf([])).toEqual([false])
  })

  test('a backup is asked for after a week, and before the first one only once there is work to lose', () => {
    const kinds = (lastMs: number | null, hasWork = true) => {
      const kept = lastMs === null ? {} : { lastBackupAt: new Date(lastMs).toISOString() }
      return checksToday({ ...input, backup: backupSight(kept, null, nowMs), hasWork }).map(({ kind }) => kind)
    }
    expect(kinds(nowMs - 6 * 24 * hourMs)).toEqual([])
    expect(kinds(nowMs - 8 * 24 * hourMs)).toEqual(['backup'])
    expect(kinds(null)).toEqual(['backup'])
    expect(kinds(null, false)).toEqual([])
  })
})
