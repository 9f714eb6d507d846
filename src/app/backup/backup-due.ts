import type { Settings } from '../app'

/** When a backup is asked for, unless Setup says otherwise. */
export const usualReminder = { days: 7, entries: 300 }

export interface BackupSight {
  readonly lastAtMs: number | null
  /** Entries since the last backup; null while that is not known. */
  readonly fresh: number | null
  readonly afterDays: number
  readonly afterEntries: number
  readonly due: boolean
}

type Kept = Pick<Settings, 'lastBackupAt' | 'lastBackupEntries' | 'backupAfterDays' | 'backupAfterEntries'>

const dayMs = 86_400_000

/**
 * A backup is due by its age or by what came after it, whichever is first; with nothing new it is as good as on its
 * day. Before the first one everything is new. `entries`: how many there are now, null while they are not counted.
 */
export function backupSight(kept: Kept, entries: number | null, nowMs: number): BackupSight {
  const { backupAfterDays: afterDays = usualReminder.days, backupAfterEntries: afterEntries = usualReminder.entries } =
    kept
  const lastAtMs = kept.lastBackupAt === undefined ? null : Date.parse(kept.lastBackupAt)
  const before = lastAtMs === null ? 0 : kept.lastBackupEntries
  const fresh = entries === null || before === undefined ? null : Math.max(0, entries - before)
  const isOld = lastAtMs !== null && nowMs - lastAtMs >= afterDays * dayMs
  const isMany = fresh !== null && fresh >= afterEntries
  return { lastAtMs, fresh, afterDays, afterEntries, due: fresh !== 0 && (isOld || isMany) }
}
