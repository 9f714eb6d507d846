import { useEffect, useMemo } from 'preact/hooks'
import { ago } from '../../app/ago'
import { useApp } from '../../app/app'
import { type BackupSight, backupSight } from '../../app/backup/backup-due'
import { followEntries } from '../../app/backup/count-entries'
import { counted } from '../../app/counted'
import { type Format, useFormat } from '../../app/format'
import { BringIn } from '../../app/import/archive-import'
import { createSaver, everythingName } from '../../app/import/save-file'
import { SaveNotice } from '../../app/import/save-notice'
import { Button } from '../../parts/button'
import { Card } from '../../parts/card'
import { Choice } from '../../parts/choice'
import { Pill } from '../../parts/pill'

/** The one copy that leaves the tablet: when it was made, what came since, and when it is asked for. */
export function BackupCard() {
  const app = useApp()
  const format = useFormat()
  const saver = useMemo(() => createSaver(app), [app])
  const count = useMemo(() => followEntries(app), [app])
  useEffect(() => count.dispose, [count])
  const kept = app.settings.value.value
  const nowMs = app.nowMs.value
  const sight = backupSight(kept, count.entries.value, nowMs)
  return (
    <Card labelledBy="setup-backup" class="setup-card">
      <h2 id="setup-backup">Backup</h2>
      <p class={sight.due || sight.lastAtMs === null ? 'setup-says setup-caution' : 'setup-says'}>
        {lastWords(sight, kept.lastBackupBatches, nowMs, format)}
      </p>
      {sight.due && (
        <p>
          <Pill tone="caution" icon="triangle-alert" text="a backup is due" />
        </p>
      )}
      <div class="setup-buttons">
        <Button
          kind="filled"
          icon="download"
          label="Save a backup file"
          onPress={() => void saver.save('all', everythingName(app.clock.nowMs()))}
        />
        <BringIn />
      </div>
      <SaveNotice saver={saver} />
      <p class="setup-hint">
        The file holds every batch, formula, material, lot and setting with its whole trail, and is read back before it
        leaves. Bringing it in again, here or on another tablet, adds what is missing and replaces nothing.
      </p>
      <Choice
        label="Ask for a backup after"
        value={String(sight.afterDays)}
        options={[1, 3, 7, 14, 30].map((days) => ({ value: String(days), label: counted(days, 'day', 'days') }))}
        onChange={(days) => void app.settings.change({ backupAfterDays: Number(days) })}
      />
      <Choice
        label="and after so many new entries, whichever comes first"
        value={String(sight.afterEntries)}
        options={[100, 300, 1000, 3000].map((entries) => ({ value: String(entries), label: String(entries) }))}
        onChange={(entries) => void app.settings.change({ backupAfterEntries: Number(entries) })}
      />
      <p class="setup-hint">A batch makes about a hundred entries. Where nothing is new, nothing is asked for.</p>
    </Card>
  )
}

function lastWords(
  { lastAtMs, fresh }: BackupSight,
  batches: number | undefined,
  nowMs: number,
  format: Format,
): string {
  const since = fresh === null ? '' : ` ${newWords(fresh)}`
  if (lastAtMs === null) return `No backup file has been saved from here yet.${since}`
  const held = batches === undefined ? '' : `, with ${counted(batches, 'batch', 'batches')}`
  return `Last backup ${ago(nowMs - lastAtMs)}, ${format.dateTime(lastAtMs)}${held}.${since}`
}

const newWords = (fresh: number): string =>
  fresh === 0 ? 'Nothing is new since.' : `${counted(fresh, 'entry is', 'entries are')} on this tablet alone.`
