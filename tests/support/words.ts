import type { Say } from '../../src/batch/entry-phrases'
import type { Event } from '../../src/batch/event'
import type { Bodies, Kind } from '../../src/batch/kinds'

/** Names are their ids, figures their plainest text: what stands between them is the sentence itself. */
export const plainSay: Say = {
  mass: (massUg) => `${massUg / 1e6} g`,
  number: String,
  percent: (fraction) => `${fraction * 100} %`,
  duration: (ms) => `${ms / 60_000} min`,
  person: (id) => id.toUpperCase(),
  line: (id) => id,
  step: (id) => id,
  vessel: (id) => id,
  lot: (id) => id,
  entry: (id) => (id === 'known' ? 'Weighed 99.8 g of shea' : null),
}

/** An entry of that kind, at ten in the morning, by RK. */
export const entryOf = <K extends Kind>(kind: K, body: Bodies[K]): Event<K, Bodies[K]> => ({
  v: 1,
  stream: 'batch:b',
  replica: 'r',
  n: 0,
  id: 'e',
  parents: [],
  lamport: 1,
  kind,
  at: '2026-11-24T10:00:00Z',
  by: 'rk',
  source: { kind: 'typed' },
  body,
  hash: '',
})
