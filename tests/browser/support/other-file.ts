/** A backup file as another tablet might have saved it, made from one that this tablet saved. */
import { createHash } from 'node:crypto'
import { savedDraft } from '../../../src/batch/document'
import type { Event } from '../../../src/batch/event'
import { seal } from '../../../src/batch/seal'
import { tipOf } from '../../../src/batch/tip'

const at = '2026-11-24T11:00:00.000+00:00'

/**
 * Has somebody who is not known here, changed the preferences once more, and has another entry where this tablet has
 * the last one about MO.
 */
export function fileOfAnotherTablet(text: string): string {
  const [first = '', ...lines] = text.trimEnd().split('\n')
  const events = lines.map((line) => JSON.parse(line) as Event)
  const of = (stream: string) => events.filter((event) => event.stream === stream)
  const mo = of('person:person-mo')
  const rival = sealed('person:person-mo', mo.slice(0, -1), mo.at(-1)?.replica ?? '', {
    id: 'person-mo',
    initials: 'MO',
    name: 'Somebody Else',
  })
  const preferences = of('settings:preferences')
  const once = sealed('settings:preferences', preferences, 'elsewhere', preferencesOf(preferences))
  const twice = sealed('settings:preferences', [...preferences, once], 'elsewhere', preferencesOf(preferences))
  const newcomer = sealed('person:newcomer', [], 'elsewhere', { id: 'newcomer', initials: 'NN', name: 'New Here' })
  const all = [...events.filter((event) => event !== mo.at(-1)), rival, once, twice, newcomer]
  const out = all.sort((one, other) =>
    one.stream === other.stream ? one.lamport - other.lamport : one.stream < other.stream ? -1 : 1,
  )
  const body = out.map((event) => `${JSON.stringify(event)}\n`).join('')
  const { own: _own, ...header } = JSON.parse(first) as Record<string, unknown>
  const counts = { streams: new Set(out.map(({ stream }) => stream)).size, events: out.length }
  return `${JSON.stringify({ ...header, ...counts, sha256: createHash('sha256').update(body).digest('hex') })}\n${body}`
}

/** The document that counts, as it was saved. */
function preferencesOf(events: readonly Event[]): object {
  const last = events.at(-1)
  if (last === undefined) throw new Error('The file holds no preferences.')
  return (last.body as { readonly document: object }).document
}

const sealed = (stream: string, before: readonly Event[], replica: string, document: object): Event =>
  seal(savedDraft(document), tipOf(before, replica), { stream, replica, id: `${stream}/${before.length}`, at, by: 'x' })
