import { signal } from '@preact/signals'
import { describe, expect, test } from 'vitest'
import type { Settings } from '../../../src/app/app'
import { backupSight } from '../../../src/app/backup/backup-due'
import { countEntries, followEntries } from '../../../src/app/backup/count-entries'
import { kindRows, meetingRows } from '../../../src/app/import/preview-words'
import { firstSettings } from '../../../src/app/settings'
import type { Meeting } from '../../../src/ports/archive'
import { memoryStore } from '../../../src/store/memory-store'
import { request, write } from '../store/support'

const dayMs = 86_400_000
const nowMs = Date.UTC(2026, 5, 16)
const keptAt = (daysAgo: number, lastBackupEntries?: number) => ({
  lastBackupAt: new Date(nowMs - daysAgo * dayMs).toISOString(),
  ...(lastBackupEntries === undefined ? {} : { lastBackupEntries }),
})

describe('when a backup is due', () => {
  test('[I76] by its age, or by what came since, whichever is first', () => {
    expect(backupSight(keptAt(6, 100), 200, nowMs)).toMatchObject({ due: false, fresh: 100 })
    expect(backupSight(keptAt(7, 100), 101, nowMs).due).toBe(true)
    expect(backupSight(keptAt(1, 100), 399, nowMs).due).toBe(false)
    expect(backupSight(keptAt(1, 100), 400, nowMs).due).toBe(true)
  })

  test('[I76] never where nothing is new, and by age alone while that is not known', () => {
    expect(backupSight(keptAt(90, 100), 100, nowMs).due).toBe(false)
    expect(backupSight(keptAt(90, 100), null, nowMs).due).toBe(true)
    expect(backupSight(keptAt(90), 100, nowMs)).toMatchObject({ due: true, fresh: null })
  })

  test('[I76] before the first one everything is new; both thresholds are a preference', () => {
    expect(backupSight({}, 299, nowMs)).toMatchObject({ due: false, fresh: 299, lastAtMs: null })
    expect(backupSight({}, 300, nowMs).due).toBe(true)
    expect(backupSight({ ...keptAt(4, 0), backupAfterDays: 3 }, 1, nowMs).due).toBe(true)
    expect(backupSight({ ...keptAt(1, 0), backupAfterEntries: 50 }, 50, nowMs).due).toBe(true)
    expect(backupSight({ ...keptAt(8, 0), backupAfterDays: 30 }, 1, nowMs).due).toBe(false)
  })

  test('[I76] entries are counted from rows, in step with what is written, without settings', async () => {
    const { log } = memoryStore('r1')
    await log.append(request(write('batch:a', 3).events))
    await log.append(request(write('settings:preferences', 2).events))
    expect(await countEntries(log)).toBe(3)
    const settings = { value: signal<Settings>(firstSettings) }
    const hasDemonstration = signal(false)
    // Nothing else of the settings is read.
    const world = { log, hasDemonstration, settings } as unknown as Parameters<typeof followEntries>[0]
    const { entries, dispose } = followEntries(world)
    await expect.poll(() => entries.value).toBe(3)
    await log.append(request(write('lot:a', 2).events))
    await log.append(request(write('settings:storage', 1).events))
    expect(entries.value).toBe(5)
    hasDemonstration.value = true
    expect(entries.value, 'the demonstration alone is nobody’s work').toBe(null)
    settings.value.value = { ...firstSettings, lastBackupAt: '2026-06-01T00:00:00Z' }
    expect(entries.value).toBe(5)
    dispose()
  })
})

describe('what a file would bring, in words', () => {
  const meeting = (stream: string, more: Partial<Meeting> = {}): Meeting => ({
    stream,
    how: 'both',
    fresh: 2,
    staysOut: 0,
    fileIsLast: false,
    ...more,
  })

  test('[I71] kinds stand as a person lists them, one of a newer version last', () => {
    const row = { fresh: 1, longer: 0, same: 0, meeting: 0 }
    const kinds = ['a-kind-of-tomorrow', 'person', 'batch'].map((kind) => ({ kind, ...row }))
    expect(kindRows(kinds).map(({ name }) => name)).toEqual(['Batches', 'People', 'a-kind-of-tomorrow'])
  })

  test('[I72] what differs is called by its name, and what becomes of both is said', async () => {
    const { log } = memoryStore('r1')
    const { events } = write('formula:f', 1)
    await log.append({
      ...request(events),
      projection: () => ({ shelf: 'here', summary: { code: 'QW-GEL-03', name: 'Gel' } }),
    })
    const rows = await meetingRows(log, [
      meeting('formula:f', { fileIsLast: true }),
      meeting('formula:f'),
      meeting('batch:none'),
      meeting('settings:preferences', { how: 'conflict', staysOut: 1 }),
    ])
    expect(rows.map(({ name }) => name)).toEqual([
      'QW-GEL-03, Gel',
      'QW-GEL-03, Gel',
      'batch:none',
      'Preferences of this tablet',
    ])
    expect(rows[0]?.becomes).toContain('The file has the later one, which counts from then on')
    expect(rows[1]?.becomes).toContain('The one here is the later one and goes on counting')
    expect(rows[2]?.becomes).toContain('2 entries come in beside what is here')
    expect(rows[3]?.becomes).toContain('What is here stays; that one stays out.')
  })
})
