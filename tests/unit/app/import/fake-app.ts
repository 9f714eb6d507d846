import { computed, signal } from '@preact/signals'
import type { App, Catalogue, DocumentFamily, Documents } from '../../../../src/app/app'

type Stored = { [F in DocumentFamily]: Map<string, Documents[F]> }

/** An app that has a catalogue, drafts, ids and settings, and nothing else. `saves` is what was written, in order. */
export function fakeApp(options: { failAfter?: number; used?: readonly number[] } = {}) {
  const stored = signal<Stored>({
    material: new Map(),
    lot: new Map(),
    formula: new Map(),
    person: new Map(),
    balance: new Map(),
    vessel: new Map(),
  })
  const saves: { family: DocumentFamily; id: string; reason?: string | undefined }[] = []
  const drafts = new Map<string, string>()
  const counter = { next: 0 }
  const catalogue: Catalogue = {
    loaded: signal(true),
    materials: computed(() => stored.value.material),
    lots: computed(() => stored.value.lot),
    formulas: computed(() => stored.value.formula),
    people: computed(() => stored.value.person),
    balances: computed(() => stored.value.balance),
    vessels: computed(() => stored.value.vessel),
    onHand: async () => new Map([...stored.value.lot.values()].map((lot) => [lot.id, lot.receivedUg])),
    save: async (family, document, reason) => {
      if (saves.length === options.failAfter) return { code: 'STORAGE_FULL' }
      saves.push({ family, id: document.id, reason })
      const map = new Map<string, unknown>(stored.value[family]).set(document.id, document)
      stored.value = { ...stored.value, [family]: map }
      return null
    },
    usedRevisions: async () => new Set(options.used ?? []),
  }
  const app = {
    catalogue,
    batches: { inHand: signal([]), finished: async () => [], open: async () => null },
    route: signal({ place: 'bench' }),
    gone: [] as unknown[],
    go: (to: unknown) => {
      app.gone.push(to)
    },
    ids: { next: () => `id-${++counter.next}` },
    nowMs: signal(Date.UTC(2026, 5, 16, 9, 0)),
    clock: { nowMs: () => Date.UTC(2026, 5, 16, 9, 0), offsetMinutes: () => 60, onJump: () => () => {} },
    drafts: {
      read: async (key: string) => drafts.get(key) ?? null,
      all: async () => drafts,
      write: async (key: string, text: string | null) => {
        if (text === null) drafts.delete(key)
        else drafts.set(key, text)
      },
    },
    settings: {
      value: signal({ person: 'p-rk' }),
      decimalMark: signal<'.' | ','>('.'),
      person: signal({ id: 'p-rk', initials: 'RK', name: 'R. K.' }),
      change: async () => {},
    },
  }
  // Places use no more of the app than this in the tests that take it.
  return { app: app as unknown as App, saves, kept: drafts, gone: app.gone }
}
