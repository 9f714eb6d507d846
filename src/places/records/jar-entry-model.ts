import { computed, type ReadonlySignal, signal } from '@preact/signals'
import type { App, BatchHandle } from '../../app/app'
import { allBatches, jarParts } from '../../app/jar-address'
import { isToPull, readJarsLeft } from '../../app/jars-due'
import { type Refusal, sentenceOf } from '../../app/refusals'
import type { Intention, JarResult } from '../../batch/intention'
import { type PullState, type Stability, stabilityOf } from '../../batch/stability'
import { jarName, type Measure } from '../../batch/stability-plan'
import { type Late, readMoment } from './check-form'
import { type JarProblem, readJarRow } from './jar-row'

/** A jar of the pass, with what is to be read of it. */
export interface OpenJar {
  readonly key: string
  readonly batch: string
  readonly code: string
  readonly pull: PullState
  readonly name: string
  readonly measures: readonly Measure[]
  /** How each of them is to be read, by its id. */
  readonly standards: Stability['standards']
}

/** What decide asked about a jar: written once it is meant. */
export interface Question {
  readonly jar: OpenJar
  readonly refusal: Refusal
  readonly meant: NonNullable<Asked['meant']>
}

type Asked = Extract<Intention, { do: 'pull' }>

export interface JarEntryModel {
  readonly jars: ReadonlySignal<readonly OpenJar[] | null>
  readonly textOf: (key: string) => string
  readonly set: (key: string, text: string) => void
  readonly problem: ReadonlySignal<JarProblem | null>
  readonly refused: ReadonlySignal<readonly { readonly jar: OpenJar; readonly sentence: string }[]>
  readonly questions: ReadonlySignal<readonly Question[]>
  /** Names of the jars whose results were written in this pass. */
  readonly recorded: ReadonlySignal<readonly string[]>
  readonly filled: ReadonlySignal<number>
  readonly record: () => Promise<void>
  readonly answer: (question: Question, isMeant: boolean) => Promise<void>
  readonly open: () => Promise<void>
}

type World = Pick<App, 'batches' | 'log' | 'drafts' | 'clock'>

const draftKey = 'jars'

/** One pass over the jars that are due, of one batch or of all, or over a single one; texts are kept until recorded. */
export function createJarEntry(app: World, batch: string, part: string): JarEntryModel {
  const handles = signal<readonly BatchHandle[] | null>(null)
  const texts = signal<Readonly<Record<string, string>>>({})
  const problem = signal<JarProblem | null>(null)
  const refused = signal<readonly { jar: OpenJar; sentence: string }[]>([])
  const questions = signal<readonly Question[]>([])
  const recorded = signal<readonly string[]>([])
  const openedAtMs = app.clock.nowMs()
  const jars = computed(
    () =>
      handles.value
        ?.flatMap((handle) => jarsOf(handle, part, openedAtMs))
        .sort((one, other) => one.pull.dueAtMs - other.pull.dueAtMs) ?? null,
  )
  const textOf = (key: string): string => texts.value[key] ?? ''
  const put = (next: Readonly<Record<string, string>>): void => {
    texts.value = next
    void app.drafts.write(draftKey, JSON.stringify(next))
  }

  const readingsOf = (jar: OpenJar): readonly JarResult[] | JarProblem => {
    const readings: JarResult[] = []
    for (const measure of jar.measures) {
      const read = readJarRow(jar.key, measure, textOf)
      if (read !== null && 'refusal' in read) return read
      if (read !== null) readings.push(read)
    }
    return readings
  }

  /** What was typed of measures that were not written stays. */
  const forget = (jar: OpenJar, measures: readonly string[]): void => {
    const rows = measures.map((measure) => `${jar.key} ${measure}`)
    const isOf = (key: string): boolean => rows.some((row) => key === row || key.startsWith(`${row} `))
    put(Object.fromEntries(Object.entries(texts.value).filter(([key]) => !isOf(key))))
  }

  const write = async (jar: OpenJar, readings: readonly JarResult[], late: Late, meant: Question['meant']) => {
    const handle = handles.value?.find(({ id }) => id === jar.batch)
    const { condition, at } = jar.pull
    const outcome = await handle?.intend({ do: 'pull', condition: condition.id, at, readings, meant, ...late })
    if (outcome === undefined) return
    if (outcome.ok) {
      recorded.value = [...recorded.value, `${jar.code}, ${jar.name}`]
      forget(
        jar,
        readings.map(({ measure }) => measure),
      )
      return
    }
    const { refusal } = outcome
    if (refusal.code === 'PULLED_ALREADY' || refusal.code === 'PULL_EARLY')
      questions.value = [...questions.value, { jar, refusal, meant: [...meant, refusal.code] }]
    else refused.value = [...refused.value, { jar, sentence: sentenceOf(refusal) }]
  }

  const lateOf = (): Late | JarProblem => {
    if (textOf('when') !== 'earlier') return {}
    const world = { nowMs: () => app.clock.nowMs(), offsetMinutes: () => app.clock.offsetMinutes() }
    const read = readMoment({ moment: textOf('moment'), reason: textOf('reason') }, { opened: null }, world)
    return 'refusal' in read ? { key: read.field, refusal: read.refusal } : read
  }

  /** Nothing is written before everything that was typed can be read. */
  const pass = async (only: readonly OpenJar[], meant: Question['meant']): Promise<void> => {
    problem.value = null
    refused.value = []
    const late = lateOf()
    if ('refusal' in late) {
      problem.value = late
      return
    }
    const read: { jar: OpenJar; readings: readonly JarResult[] }[] = []
    for (const jar of only) {
      const readings = readingsOf(jar)
      if ('refusal' in readings) {
        problem.value = readings
        return
      }
      if (readings.length > 0) read.push({ jar, readings })
    }
    if (read.length === 0) problem.value = { key: 'all', refusal: { code: 'CHECKS_EMPTY' } }
    for (const { jar, readings } of read) await write(jar, readings, late, meant)
  }

  return {
    jars,
    textOf,
    set: (key, text) => {
      put({ ...texts.value, [key]: text })
      problem.value = null
    },
    problem,
    refused,
    questions,
    recorded,
    filled: computed(() => Object.values(jars.value ?? []).filter((jar) => isFilled(jar, textOf)).length),
    record: async () => {
      questions.value = []
      recorded.value = []
      await pass(jars.value ?? [], [])
    },
    answer: async (question, isMeant) => {
      questions.value = questions.value.filter((each) => each !== question)
      if (isMeant) await pass([question.jar], question.meant)
      else
        forget(
          question.jar,
          question.jar.measures.map(({ id }) => id),
        )
    },
    open: async () => {
      texts.value = { ...textsIn(await app.drafts.read(draftKey)), ...texts.value }
      const ids = batch === allBatches ? await batchesToPull(app, openedAtMs) : [batch]
      const opened = await Promise.all(ids.map((id) => app.batches.open(id)))
      handles.value = opened.filter((handle) => handle !== null)
    },
  }
}

const batchesToPull = async (app: World, nowMs: number): Promise<readonly string[]> => {
  const left = await readJarsLeft(app)
  return [...new Set(left.filter(({ pull }) => isToPull(pull, nowMs)).map(({ batch }) => batch.id))]
}

function jarsOf(handle: BatchHandle, part: string, nowMs: number): readonly OpenJar[] {
  const { state } = handle.view.value
  const stability = stabilityOf(state)
  if (stability === null) return []
  return stability.pulls
    .filter((pull) => (part === jarParts.today ? pull.left.length > 0 && isToPull(pull, nowMs) : pull.id === part))
    .map((pull) => ({
      key: `${handle.id} ${pull.id}`,
      batch: handle.id,
      code: state.header.code,
      pull,
      name: jarName(pull.condition, pull.at),
      // A jar that is read already can be read once more.
      measures: pull.left.length > 0 ? pull.left : stability.plan.measures,
      standards: stability.standards,
    }))
}

const isFilled = ({ key, measures }: OpenJar, textOf: (key: string) => string): boolean =>
  measures.some(({ id }) => textOf(`${key} ${id}`).trim() !== '' || textOf(`${key} ${id} good`) !== '')

/** Texts as they were kept; anything else is nothing. */
function textsIn(kept: string | null): Readonly<Record<string, string>> {
  if (kept === null) return {}
  const read: unknown = JSON.parse(kept)
  if (typeof read !== 'object' || read === null) return {}
  return Object.fromEntries(
    Object.entries(read).filter((pair): pair is [string, string] => typeof pair[1] === 'string'),
  )
}
