import { computed, effect, type ReadonlySignal, signal } from '@preact/signals'
import type { Person } from '../batch/catalogue'
import type { EventLog } from '../ports/event-log'
import type { Settings, SettingsModel } from './app'
import { loadWriting } from './load-writing'
import type { Writer } from './writer'

const stream = 'settings:preferences'
const markKey = 'pannikin.mark'

export const firstSettings: Settings = {
  theme: 'system',
  hand: 'right',
  decimalMark: 'locale',
  studio: '',
  currency: '£',
  person: '',
}

export interface KeptSettings extends SettingsModel {
  readonly load: () => Promise<void>
}

interface SettingsWorld {
  readonly log: EventLog
  readonly writer: Writer
  readonly people: ReadonlySignal<ReadonlyMap<string, Person>>
  readonly root: Pick<HTMLElement, 'dataset'>
  /** Where the theme and the locale's decimal mark are kept for the moment before the app has started. */
  readonly early: Pick<Storage, 'getItem' | 'setItem'>
  readonly calm: Promise<void>
}

/** Preferences of this tablet; a stream like any other, so that a backup carries them and every change has a trail. */
export function createSettings({ log, writer, people, root, early, calm }: SettingsWorld): KeptSettings {
  const value = signal<Settings>(firstSettings)
  // Asking the browser for it costs a start dearly, and it hardly ever changes: what it was is looked at again later.
  const localeMark = signal(rememberedMark(early))
  void calm.then(() => {
    localeMark.value = markOfLocale()
    early.setItem(markKey, localeMark.value)
  })
  const person = computed(() => people.value.get(value.value.person) ?? null)

  effect(() => {
    const { theme, hand } = value.value
    if (theme === 'system') delete root.dataset.theme
    else root.dataset.theme = theme
    root.dataset.hand = hand
  })

  const take = (next: Settings): void => {
    value.value = next
    early.setItem('pannikin.theme', next.theme)
  }
  let changing = 0
  const load = async (): Promise<void> => {
    const head = await log.head(stream)
    // What is being changed here is newer than what was read, and about to be the last entry.
    if (changing > 0 || !head?.summary) return
    // Written by this module alone; what an older version did not know takes its first value.
    take({ ...firstSettings, ...(head.summary as Partial<Settings>) })
  }
  // By a file that came in, or on another page.
  log.onAppended((events) => {
    if (changing === 0 && events.some((event) => event.stream === stream)) void load()
  })

  return {
    value,
    person,
    decimalMark: computed(() => (value.value.decimalMark === 'locale' ? localeMark.value : value.value.decimalMark)),
    load,
    change: async (part) => {
      const next = { ...value.value, ...part }
      take(next)
      changing += 1
      try {
        const { saveDocument } = await loadWriting()
        await saveDocument({ log, writer, by: () => next.person || 'nobody' }, 'settings', {
          id: 'preferences',
          ...next,
        })
      } finally {
        changing -= 1
      }
    },
  }
}

const rememberedMark = (early: SettingsWorld['early']): '.' | ',' => {
  const mark = early.getItem(markKey)
  return mark === '.' || mark === ',' ? mark : markOfLocale()
}

function markOfLocale(): '.' | ',' {
  return new Intl.NumberFormat().format(0.5).includes(',') ? ',' : '.'
}
