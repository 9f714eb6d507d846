import { describe, expect, test } from 'vitest'
import type { App } from '../../../../src/app/app.ts'
import { createBring } from '../../../../src/app/import/bring-file.ts'
import { createSaver } from '../../../../src/app/import/save-file.ts'
import type { Archive, ArchivePreview } from '../../../../src/ports/archive.ts'
import type { Saved, ShareRefusal } from '../../../../src/ports/share.ts'
import type { Result } from '../../../../src/trade/result.ts'

const preview: ArchivePreview = {
  header: { format: 'pannikin', version: 1, madeAt: '2026-11-24T10:00:00Z', streams: 1, events: 3, sha256: '' },
  fresh: 3,
  same: 0,
  conflicting: 0,
  streams: ['batch:b'],
  gaps: [],
  kinds: [{ kind: 'batch', fresh: 1, longer: 0, same: 0, meeting: 0 }],
  meetings: [],
  signed: [],
}

const written = { ok: true, value: { file: new Blob(['x']), entries: 3, streams: 1, batches: 1, leftOut: 0 } } as const

/** An app with an archive that remembers what was asked of it, and a share that answers in turn. */
function appOf(archive: Partial<Archive>, shares: readonly Result<Saved, ShareRefusal>[] = []) {
  const changed: object[] = []
  const answers = [...shares]
  const app = {
    archive: async () => archive,
    log: { heads: async () => [{ count: 3 }] },
    clock: { nowMs: () => Date.UTC(2026, 10, 24) },
    share: { saveFile: async () => answers.shift() ?? { ok: true, value: 'downloading' } },
    settings: { change: async (part: object) => void changed.push(part) },
  }
  // These two use nothing else of the app.
  return { app: app as unknown as App, changed }
}

describe('bringing in a file', () => {
  test('[I40] nothing is applied before the person has seen what the file would bring', async () => {
    const applied: Blob[] = []
    const { app } = appOf({
      inspect: async () => ({ ok: true, value: preview }),
      apply: async (file) => {
        applied.push(file)
        return { ok: true, value: preview }
      },
    })
    const bring = createBring(app)
    await bring.take(new File(['{"format":"pannikin","version":1}\n'], 'batch.ndjson'))
    expect(bring.state.value).toMatchObject({ step: 'preview', preview })
    expect(applied).toHaveLength(0)
    await bring.apply()
    expect(bring.state.value.step).toBe('done')
    expect(applied).toHaveLength(1)
  })

  test('a damaged file is refused with its reason, and cannot be applied', async () => {
    const { app } = appOf({ inspect: async () => ({ ok: false, refusal: { code: 'FILE_DAMAGED', line: 4 } }) })
    const bring = createBring(app)
    await bring.take(new File(['x'], 'torn.ndjson'))
    await bring.apply()
    expect(bring.state.value).toMatchObject({ step: 'refused', refusal: { code: 'FILE_DAMAGED', line: 4 } })
  })
})

describe('saving a file', () => {
  test('a file of everything that went out counts as the last backup; one batch does not', async () => {
    const { app, changed } = appOf({ write: async () => written })
    const saver = createSaver(app)
    await saver.save(['batch:b'], 'one.ndjson')
    expect(changed).toEqual([])
    await saver.save('all', 'all.ndjson')
    expect(changed).toEqual([
      { lastBackupAt: '2026-11-24T00:00:00.000Z', lastBackupEntries: 8 * 3, lastBackupBatches: 1 },
    ])
    expect(saver.state.value.step).toBe('saved')
  })

  test('a browser that wants a fresh tap, or a sheet that was closed, leaves the file ready', async () => {
    const refused = { ok: false, refusal: { code: 'SHARE_NEEDS_TAP' } } as const
    const { app, changed } = appOf({ write: async () => written }, [refused, { ok: true, value: 'dismissed' }])
    const saver = createSaver(app)
    await saver.save('all', 'all.ndjson')
    expect(saver.state.value.step).toBe('ready')
    await saver.handOn()
    expect(saver.state.value.step).toBe('ready')
    expect(changed).toEqual([])
    await saver.handOn()
    expect(saver.state.value.step).toBe('saved')
  })

  test('an archive that cannot be written is said, not thrown', async () => {
    const { app } = appOf({ write: () => Promise.reject(new Error('disk')) })
    const saver = createSaver(app)
    await saver.save('all', 'all.ndjson')
    expect(saver.state.value).toMatchObject({ step: 'failed', refusal: { code: 'STORAGE_REFUSED' } })
  })
})
