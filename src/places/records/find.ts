import type { App } from '../../app/app'
import { createFormat } from '../../app/format'
import type { BatchSummary } from '../../batch/summary'
import { stateOf } from './record-state'

export type Sieve = 'all' | 'to-do' | 'off-plan'

export interface Wanted {
  readonly words: string
  readonly sieve: Sieve
}

/** Names that a summary holds only the ids of. */
export type Names = Pick<App['catalogue'], 'lots' | 'people'>

/**
 * Whether a batch is wanted. What can be found of it is put together once: with thousands of batches each letter typed
 * would do it thousands of times. Made anew where a lot or a person gets another name.
 */
export function finder({ lots, people }: Names): (summary: BatchSummary, wanted: Wanted) => boolean {
  const lotsById = lots.value
  const peopleById = people.value
  const texts = new WeakMap<BatchSummary, string>()
  const dayText = daysInWords()
  const textOf = (summary: BatchSummary): string => {
    const known = texts.get(summary)
    if (known !== undefined) return known
    const person = peopleById.get(summary.person)
    const words = [
      summary.code,
      summary.shortName,
      summary.formulaName,
      `r${summary.revision}`,
      summary.decision ?? '',
      stateOf(summary).word,
      person ? `${person.initials} ${person.name}` : '',
      ...summary.usedByLot.map(({ lot }) => lotsById.get(lot)?.code ?? ''),
      ...new Set([summary.openedAtMs, summary.closedAtMs ?? summary.touchedAtMs, summary.touchedAtMs].map(dayText)),
    ]
    const text = words.join(' ').toLowerCase()
    texts.set(summary, text)
    return text
  }
  return (summary, { words, sieve }) => {
    if (!passes(summary, sieve)) return false
    const text = textOf(summary)
    return words
      .toLowerCase()
      .split(/\s+/)
      .every((word) => text.includes(word))
  }
}

function passes(summary: BatchSummary, sieve: Sieve): boolean {
  switch (sieve) {
    case 'all':
      return true
    case 'to-do':
      return (
        summary.checksDue.length > 0 ||
        summary.doubts > 0 ||
        summary.openDeviations > 0 ||
        summary.decision === 'hold' ||
        summary.decision === 'rework'
      )
    case 'off-plan':
      return summary.deviations > 0 || summary.outOfLimits !== undefined || summary.unexplainedUg !== undefined
  }
}

/** "2026-11-24 24 Nov 2026", each day's words made once. */
function daysInWords(): (atMs: number) => string {
  const format = createFormat('.')
  const known = new Map<string, string>()
  return (atMs) => {
    const date = new Date(atMs)
    const two = (value: number): string => String(value).padStart(2, '0')
    const day = `${date.getFullYear()}-${two(date.getMonth() + 1)}-${two(date.getDate())}`
    const words = known.get(day) ?? `${day} ${format.date(atMs)}`
    known.set(day, words)
    return words
  }
}
