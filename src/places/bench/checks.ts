import type { BackupSight } from '../../app/backup/backup-due'
import type { Balance } from '../../batch/catalogue'
import type { BatchSummary } from '../../batch/summary'

/** One line of *Checks today*. Moments in ms UTC. */
export type TodayCheck =
  | {
      readonly kind: 'batch'
      readonly batch: BatchSummary
      readonly labels: readonly string[]
      readonly dueAtMs: number
      readonly due: boolean
    }
  | { readonly kind: 'balance'; readonly balance: Balance; readonly dueAtMs: number | null; readonly due: boolean }
  | { readonly kind: 'backup'; readonly sight: BackupSight; readonly due: boolean }

interface TodayInput {
  readonly batches: readonly BatchSummary[]
  readonly balances: readonly Balance[]
  /** Whether anything has been recorded that a lost tablet would take along. */
  readonly hasWork: boolean
  readonly backup: BackupSight
  readonly nowMs: number
  /** The end of the local day, ms UTC. */
  readonly dayEndsMs: number
}

const hourMs = 3_600_000

/** What is due now first, in the order it fell due; then what comes later today. */
export function checksToday(input: TodayInput): readonly TodayCheck[] {
  const checks = [...batchChecks(input), ...balanceChecks(input), ...backupCheck(input)]
  return checks.sort((a, b) => Number(b.due) - Number(a.due) || momentOf(a) - momentOf(b))
}

/** What falls due together in one batch stands on one line. */
function batchChecks({ batches, nowMs, dayEndsMs }: TodayInput): TodayCheck[] {
  return batches.flatMap((batch) => {
    const today = batch.checksDue.filter(({ dueAtMs }) => dueAtMs < dayEndsMs)
    return [...new Set(today.map(({ dueAtMs }) => dueAtMs))].map((dueAtMs) => {
      const labels = today.filter((each) => each.dueAtMs === dueAtMs).map(({ label }) => label)
      return { kind: 'batch' as const, batch, labels, dueAtMs, due: dueAtMs <= nowMs }
    })
  })
}

/** Due so many hours after its last good check; of one that was never checked nothing is overdue. */
function balanceChecks({ batches, balances, nowMs }: TodayInput): TodayCheck[] {
  return balances.flatMap((balance) => {
    if (balance.archived || balance.checkEveryHours === undefined) return []
    const lastMs = lastCheckOf(balance.id, batches)
    const dueAtMs = lastMs === null ? null : lastMs + balance.checkEveryHours * hourMs
    return dueAtMs !== null && dueAtMs > nowMs
      ? []
      : [{ kind: 'balance' as const, balance, dueAtMs, due: dueAtMs !== null }]
  })
}

/** Before the first backup it is asked for once there is work to lose, and insisted on once that is much. */
function backupCheck({ hasWork, backup }: TodayInput): TodayCheck[] {
  const asked = backup.due || (backup.lastAtMs === null && hasWork)
  return asked ? [{ kind: 'backup', sight: backup, due: backup.due }] : []
}

function lastCheckOf(balance: string, batches: readonly BatchSummary[]): number | null {
  const moments = batches.flatMap((batch) => batch.balanceChecks ?? []).filter((check) => check.balance === balance)
  return moments.length === 0 ? null : Math.max(...moments.map(({ atMs }) => atMs))
}

function momentOf(check: TodayCheck): number {
  switch (check.kind) {
    case 'batch':
      return check.dueAtMs
    case 'balance':
      return check.dueAtMs ?? 0
    case 'backup':
      return Number.MAX_SAFE_INTEGER
  }
}
