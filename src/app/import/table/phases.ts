import type { Mapping } from './mapping'
import { type PhaseWords, readPhaseCell } from './row-words'

/** Phases in the order in which they first stand in the sheet. */
export type PhasesFound = readonly { readonly letter: string; readonly name: string }[]

export interface Phases {
  /** A row that says a phase and nothing else. */
  readonly enter: (text: string) => void
  /** A line: its phase cell where it has one, else the phase before holds. */
  readonly take: (row: readonly string[]) => void
  readonly current: () => number
  readonly found: () => PhasesFound
}

/** Follows the phases down a sheet. A phase that comes again is the same one. */
export function createPhases(mapping: Mapping, cells: readonly (readonly string[])[]): Phases {
  const found: PhaseWords[] = []
  const at = { phase: -1 }
  const column = mapping.roles.indexOf('phase')
  const isCoded = !mapping.isOwn && isLineCodes(cells.slice(mapping.heading + 1).map((row) => row[column] ?? ''))

  const enter = ({ letter, name }: PhaseWords): void => {
    const here = found.findIndex((each) => (letter === null ? same(each.name, name) : each.letter === letter))
    at.phase = here === -1 ? found.length : here
    const known = found[here]
    if (known === undefined) found.push({ letter, name })
    else if (known.name === '' && name !== '') found[here] = { letter: known.letter, name }
  }
  const wordsOf = (text: string): PhaseWords => {
    if (mapping.isOwn && text.length <= 4) return { letter: text, name: '' }
    const read = readPhaseCell(text) ?? { letter: null, name: text.slice(0, 80) }
    return isCoded ? { ...read, letter: read.letter?.charAt(0) ?? null } : read
  }
  return {
    enter: (text) => enter(wordsOf(text)),
    take: (row) => {
      const text = row[column] ?? ''
      const name = row[mapping.roles.indexOf('phase-name')] ?? ''
      if (text !== '') enter({ ...wordsOf(text), ...(name === '' ? {} : { name }) })
      else if (at.phase === -1) enter({ letter: null, name })
    },
    current: () => at.phase,
    found: () => withLetters(found),
  }
}

const same = (one: string, other: string): boolean => one.toLowerCase() === other.toLowerCase()

/** A1, A2, A3, B1: numbers of lines within phases, not phases of one line each. */
function isLineCodes(texts: readonly string[]): boolean {
  const filled = texts.filter((text) => text !== '')
  const isEach = filled.length > 2 && filled.every((text) => /^[A-Z]\d{1,2}$/.test(text))
  return isEach && new Set(filled).size === filled.length && new Set(filled.map((text) => text[0])).size < filled.length
}

function withLetters(phases: readonly PhaseWords[]): PhasesFound {
  const taken = new Set(phases.map(({ letter }) => letter))
  const free = [...'ABCDEFGHIJKLMNOPQRSTUVWXYZ'].filter((letter) => !taken.has(letter))
  return phases.map(({ letter, name }) => {
    const own = letter ?? free.shift() ?? '?'
    return { letter: own, name: name === '' ? `Phase ${own}` : name }
  })
}
