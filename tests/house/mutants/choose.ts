/** Which small ways of breaking the sums and the rules of a batch are tried, and the code that has them all, each behind a switch. */
import { readFileSync } from 'node:fs'
import { Instrumenter } from '@stryker-mutator/instrumenter'
import { filesUnder } from '../sources.ts'

/** The names by which the broken code asks. */
const header = 'const { isOn: stryMutAct_9fa48, cover: stryCov_9fa48 } = globalThis.mutantSwitchboard;'

export interface Mutant {
  readonly id: string
  readonly where: string
  readonly what: string
}

export interface BrokenCode {
  /** In an order that says nothing of where they stand. */
  readonly mutants: readonly Mutant[]
  readonly files: Readonly<Record<string, string>>
}

type Source = Parameters<Instrumenter['instrument']>[0][number]
type Broken = Awaited<ReturnType<Instrumenter['instrument']>>['mutants'][number]

/** All that can be broken in the rooms is listed first, so that every mutant is as likely to be picked as any other. */
export const breakRooms = async (wanted: number, seed: number): Promise<BrokenCode> => {
  const sources = ['src/trade', 'src/batch']
    .flatMap(filesUnder)
    .filter((path) => path.endsWith('.ts'))
    .map((name) => ({ name, content: readFileSync(name, 'utf8'), mutate: true }))
  return breakCode(sources, wanted, seed)
}

export const breakCode = async (sources: readonly Source[], wanted: number, seed: number): Promise<BrokenCode> => {
  const picked = shuffled((await broken(sources)).mutants, seed).slice(0, wanted)
  const order = new Map(picked.map((mutant, index) => [nameOf(mutant), index]))
  const { files, mutants } = await broken(
    sources.flatMap((source) => {
      const mutate = picked.filter(({ fileName }) => fileName === source.name).map(({ location }) => location)
      return mutate.length === 0 ? [] : [{ ...source, mutate }]
    }),
  )
  return {
    // Where one stands inside another, more came along than were picked.
    mutants: mutants
      .filter((mutant) => order.has(nameOf(mutant)))
      .sort((one, other) => (order.get(nameOf(one)) ?? 0) - (order.get(nameOf(other)) ?? 0))
      .map((mutant) => ({
        id: mutant.id,
        where: `${mutant.fileName}:${mutant.location.start.line + 1}`,
        what: `${mutant.mutatorName}: ${mutant.replacement}`,
      })),
    files: Object.fromEntries(files.map(({ name, content }) => [name, `${header} ${content}`])),
  }
}

const broken = (sources: readonly Source[]) =>
  new Instrumenter(quiet).instrument(sources, { plugins: null, excludedMutations: [], ignorers: [], noHeader: true })

const nameOf = ({ fileName, location, mutatorName, replacement }: Broken): string =>
  JSON.stringify([fileName, location, mutatorName, replacement])

/** The same seed gives the same order (a linear congruential generator, numbers of Park and Miller). */
const shuffled = <T>(items: readonly T[], seed: number): readonly T[] => {
  let state = seed % 2147483647
  const random = (): number => {
    state = (state * 48271) % 2147483647
    return state
  }
  return items
    .map((item) => ({ item, key: random() }))
    .sort((one, other) => one.key - other.key)
    .map(({ item }) => item)
}

const nothing = (): void => undefined
const no = (): boolean => false
const quiet: ConstructorParameters<typeof Instrumenter>[0] = {
  isTraceEnabled: no,
  isDebugEnabled: no,
  isInfoEnabled: no,
  isWarnEnabled: no,
  isErrorEnabled: no,
  isFatalEnabled: no,
  trace: nothing,
  debug: nothing,
  info: nothing,
  warn: nothing,
  error: nothing,
  fatal: nothing,
}
