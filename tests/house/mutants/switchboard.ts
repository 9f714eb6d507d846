/** Which mutant of the broken code is on, and which ones a test runs through. One a process: broken code finds it here. */
export interface Switchboard {
  /** The mutant that is on: none while tests show what they cover. */
  on: string | undefined
  /** How often what is on was met since it was switched on. */
  met: number
  /** Where what is run through is noted; undefined while nobody asks. */
  covered: Set<string> | undefined
  /** How many places of the broken code were come to while that was noted. */
  steps: number
  /** What ran while modules were loaded: such code has run before a test could switch it. */
  readonly loaded: Set<string>
  readonly isOn: (mutant: string) => boolean
  readonly cover: (...mutants: readonly string[]) => void
  /** Stands in for a module's own cache, in which one mutant's wrong sums would meet the next test. */
  readonly newCache: () => Cache
  /** Switches one mutant on, or none, with every cache empty. */
  readonly turn: (on: string | undefined) => void
}

declare global {
  var mutantSwitchboard: Switchboard | undefined
}

/** What is met more often than this in one test is in a loop that never ends. */
const mostMet = 2_000_000
export const endlessCode = 'ENDLESS'

class Cache {
  #byObject = new WeakMap<object, unknown>()
  #byValue = new Map<unknown, unknown>()
  readonly get = (key: unknown): unknown => (isObject(key) ? this.#byObject.get(key) : this.#byValue.get(key))
  readonly has = (key: unknown): boolean => (isObject(key) ? this.#byObject.has(key) : this.#byValue.has(key))
  readonly set = (key: unknown, value: unknown): void => {
    if (isObject(key)) this.#byObject.set(key, value)
    else this.#byValue.set(key, value)
  }
  readonly clear = (): void => {
    this.#byObject = new WeakMap()
    this.#byValue = new Map()
  }
}

const isObject = (key: unknown): key is object => typeof key === 'object' && key !== null

const made = (): Switchboard => {
  const loaded = new Set<string>()
  const caches: Cache[] = []
  const board: Switchboard = {
    on: undefined,
    met: 0,
    covered: loaded,
    steps: 0,
    loaded,
    isOn: (mutant) => {
      if (board.on !== mutant) return false
      board.met += 1
      if (board.met > mostMet) throw Object.assign(new Error('met without end'), { code: endlessCode })
      return true
    },
    cover: (...mutants) => {
      if (!board.covered) return
      board.steps += 1
      for (const mutant of mutants) board.covered.add(mutant)
    },
    newCache: () => {
      const cache = new Cache()
      caches.push(cache)
      return cache
    },
    turn: (on) => {
      board.on = on
      board.met = 0
      for (const cache of caches) cache.clear()
    },
  }
  return board
}

globalThis.mutantSwitchboard ??= made()
export const switchboard: Switchboard = globalThis.mutantSwitchboard
