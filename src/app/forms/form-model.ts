import { computed, type ReadonlySignal, signal } from '@preact/signals'
import type { App } from '../app'
import type { Refusal } from '../refusals'
import { formSentenceOf } from '../refusals/forms'
import type { FieldSpec, Values } from './field-spec'
import { type FieldErrors, isSaidWhileTyping, readFields } from './read-fields'
import { settleTyped } from './settle-typed'
import { showFields } from './show-fields'

/** One plain form over one document. What is typed is kept as a draft at once, until it is saved or thrown away. */
export interface FormModel {
  readonly specs: readonly FieldSpec[]
  readonly values: ReadonlySignal<Values>
  /** Sentences by field; of what is still empty only once Save was tried. */
  readonly errors: ReadonlySignal<Readonly<Record<string, string>>>
  /** Why the last Save did not happen, where that is no field's fault. */
  readonly refusal: ReadonlySignal<string | null>
  /** Something was typed that is not saved. */
  readonly changed: ReadonlySignal<boolean>
  /** Takes up what was typed before a reload. */
  readonly load: () => Promise<void>
  readonly set: (key: string, text: string) => void
  readonly settle: () => Promise<void>
  /** True once the document is saved. */
  readonly save: () => Promise<boolean>
  readonly discard: () => Promise<void>
}

interface FormOptions {
  readonly specs: readonly FieldSpec[]
  /** The document as it stands, or the beginnings of a new one; fields that the form does not show stay in it. */
  readonly document: object
  /** Under which what is typed is kept. */
  readonly draft: string
  /** Writes the document that the texts make. */
  readonly write: (document: Record<string, unknown>) => Promise<Refusal | string | null>
  /** What must hold between fields; sentences by field. */
  readonly check?: (values: Values) => Readonly<Record<string, string>>
}

export function createForm(app: App, { specs, document, draft, write, check }: FormOptions): FormModel {
  const first = showFields(specs, document, app.settings.decimalMark.value)
  const values = signal<Values>(first)
  const tried = signal(false)
  const refusal = signal<string | null>(null)
  const read = computed(() => readFields(specs, values.value, document))
  const errors = computed(() => ({
    ...(check?.(values.value) ?? {}),
    ...(read.value.ok ? {} : sentences(read.value.refusal)),
  }))
  const put = (next: Values) => {
    values.value = next
    refusal.value = null
    void app.drafts.write(draft, JSON.stringify(next))
  }
  const settle = async () => {
    const before = values.value
    const settled = await settleTyped(specs, before, app.settings.decimalMark.value)
    if (values.value === before && specs.some(({ key }) => settled[key] !== before[key])) put(settled)
  }
  const discard = () => app.drafts.write(draft, null)
  return {
    specs,
    values,
    refusal,
    settle,
    errors: computed(() => {
      if (tried.value) return errors.value
      return read.value.ok ? {} : sentences(whileTyping(read.value.refusal))
    }),
    changed: computed(() => specs.some(({ key }) => (values.value[key] ?? '') !== (first[key] ?? ''))),
    load: async () => {
      const kept = valuesFrom(await app.drafts.read(draft))
      if (kept) values.value = { ...first, ...kept }
    },
    set: (key, text) => put({ ...values.value, [key]: text }),
    save: async () => {
      await settle()
      tried.value = true
      if (!read.value.ok || Object.keys(errors.value).length > 0) return false
      const refused = await write(read.value.value)
      if (refused !== null) {
        refusal.value = typeof refused === 'string' ? refused : formSentenceOf(refused)
        return false
      }
      await discard()
      return true
    },
    discard: async () => {
      values.value = first
      tried.value = false
      refusal.value = null
      await discard()
    },
  }
}

const sentences = (errors: FieldErrors): Record<string, string> =>
  Object.fromEntries(Object.entries(errors).map(([key, refusal]) => [key, formSentenceOf(refusal)]))

const whileTyping = (errors: FieldErrors): FieldErrors =>
  Object.fromEntries(Object.entries(errors).filter(([, refusal]) => isSaidWhileTyping(refusal)))

/** Written by a form alone; anything else is passed over. */
function valuesFrom(text: string | null): Values | null {
  if (text === null) return null
  try {
    const kept: unknown = JSON.parse(text)
    const isTexts =
      typeof kept === 'object' && kept !== null && Object.values(kept).every((each) => typeof each === 'string')
    return isTexts ? (kept as Values) : null
  } catch {
    return null
  }
}
