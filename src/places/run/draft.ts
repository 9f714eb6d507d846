import { type ReadonlySignal, signal } from '@preact/signals'
import { whenIdle } from '../../app/after-paint'
import type { App } from '../../app/app'
import type { Reading } from '../../trade/weighing'

/** How a person reads the balance: pan tared before, pan left as it was, or the container before and after. */
export type NumberMode = Reading['mode']

/** What is typed and chosen for one step but not recorded: texts to the letter, by the name of their field. */
export interface Draft {
  readonly mode: NumberMode
  readonly fields: Readonly<Record<string, string>>
}

export const emptyDraft: Draft = { mode: 're-tare', fields: {} }

export interface DraftBook {
  /** What is half-made for a step or a sheet; empty where nothing is. */
  readonly of: (key: string) => Draft
  readonly change: (key: string, part: Partial<Draft>) => void
  readonly setField: (key: string, name: string, text: string) => void
  /**
   * Forgets the typed texts that have been recorded. What was typed anew meanwhile stays, and so does the way of reading
   * the balance.
   */
  readonly clear: (key: string, recorded: Draft) => void
  /** True once the drafts of an earlier visit have been read. */
  readonly loaded: ReadonlySignal<boolean>
}

/**
 * Half-typed digits by step, in the drafts' store under `batch:<id>:<step>`, so that a step change, a reload or a kill
 * loses none. What was typed since wins over what the store answers late.
 */
export function createDraftBook(port: App['drafts'], batchId: string): DraftBook {
  const prefix = `batch:${batchId}:`
  const drafts = signal<ReadonlyMap<string, Draft>>(new Map())
  const loaded = signal(false)
  const touched = new Set<string>()

  const of = (key: string): Draft => drafts.value.get(key) ?? emptyDraft
  const keep = (key: string, draft: Draft): void =>
    void port.write(prefix + key, isEmpty(draft) ? null : JSON.stringify(draft))
  const set = (key: string, draft: Draft) => {
    touched.add(key)
    drafts.value = new Map(drafts.value).set(key, draft)
  }
  const put = (key: string, draft: Draft) => {
    set(key, draft)
    keep(key, draft)
  }
  void port.all(prefix).then((stored) => {
    const merged = new Map(drafts.peek())
    for (const [key, text] of stored) {
      const name = key.startsWith(prefix) ? key.slice(prefix.length) : key
      const draft = readDraft(text)
      if (draft && !touched.has(name)) merged.set(name, draft)
    }
    drafts.value = merged
    loaded.value = true
  })

  return {
    of,
    change: (key, part) => put(key, { ...of(key), ...part }),
    setField: (key, name, text) => put(key, { ...of(key), fields: { ...of(key).fields, [name]: text } }),
    clear: (key, recorded) => {
      const { mode, fields } = of(key)
      const newer = Object.entries(fields).filter(([name, text]) => text !== recorded.fields[name])
      set(key, { mode, fields: Object.fromEntries(newer) })
      // The next step is to be on the screen first; what is typed until then is kept with it.
      void whenIdle().then(() => keep(key, drafts.peek().get(key) ?? emptyDraft))
    },
    loaded,
  }
}

/** What was added to a text that still stood in the field though it had been recorded; or the text, where it is another. */
export const typedAfter = (recorded: string, text: string): string => {
  if (text === recorded || recorded === '') return text
  if (text.startsWith(recorded)) return text.slice(recorded.length)
  return recorded.startsWith(text) ? '' : text
}

const isEmpty = (draft: Draft): boolean =>
  draft.mode === emptyDraft.mode && Object.values(draft.fields).every((text) => text === '')

const modes: readonly string[] = ['re-tare', 'cumulative', 'by-difference'] satisfies readonly NumberMode[]
const isMode = (value: unknown): value is NumberMode => typeof value === 'string' && modes.includes(value)

/** A draft of this or an earlier version; what cannot be read is no draft. */
function readDraft(text: string): Draft | null {
  try {
    const read: unknown = JSON.parse(text)
    if (typeof read !== 'object' || read === null) return null
    const { mode, fields } = read as { mode?: unknown; fields?: unknown }
    const texts = typeof fields === 'object' && fields !== null ? Object.entries(fields) : []
    return {
      mode: isMode(mode) ? mode : emptyDraft.mode,
      fields: Object.fromEntries(texts.filter((pair): pair is [string, string] => typeof pair[1] === 'string')),
    }
  } catch {
    return null
  }
}
