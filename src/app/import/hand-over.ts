import { type ReadonlySignal, signal } from '@preact/signals'
import type { App } from '../app'
import { formSentenceOf } from '../refusals/forms'

/** Hands a text to the person as a file, and says what became of it. */
export interface HandOver {
  readonly said: ReadonlySignal<{ readonly good: boolean; readonly text: string } | null>
  readonly hand: (
    name: string,
    mime: 'text/csv' | 'application/json' | 'text/html',
    text: string | Promise<string>,
  ) => Promise<void>
}

export function createHandOver({ share }: Pick<App, 'share'>): HandOver {
  const said = signal<{ good: boolean; text: string } | null>(null)
  return {
    said,
    hand: async (name, mime, text) => {
      const saved = await share.saveFile(name, mime, new Blob([await text], { type: mime }))
      if (!saved.ok) said.value = { good: false, text: formSentenceOf(saved.refusal) }
      else said.value = saved.value === 'dismissed' ? null : { good: true, text: `${name} is handed over.` }
    },
  }
}

/** A file's name from what is in it: letters, digits and dashes, whatever a code may hold. */
export const fileNameOf = (what: string, ending: 'csv' | 'json'): string =>
  `${what.replace(/[^\p{L}\p{N}.]+/gu, '-').replace(/^[-.]+|[-.]+$/g, '') || 'formula'}.${ending}`
