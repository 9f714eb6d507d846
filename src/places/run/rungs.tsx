import type { VNode } from 'preact'
import { useRef } from 'preact/hooks'
import { Rung, RungList } from '../../parts/rung'
import type { LadderRung } from './ladder-of'
import { useRun } from './run-context'

interface Drawn {
  readonly rung: LadderRung
  readonly node: VNode
}

/** The steps of an open phase. One that shows what it showed before is not drawn again: a ladder can be long. */
export function Rungs({ label, rungs }: { label: string; rungs: readonly LadderRung[] }) {
  const run = useRun()
  const before = useRef<ReadonlyMap<string, Drawn>>(new Map())
  const press = (id: string) => {
    run.take(id)
    if (run.sheet.value?.name === 'steps') run.sheet.value = null
  }
  const drawn = rungs.map((rung): Drawn => {
    const known = before.current.get(rung.id)
    return known && isSame(known.rung, rung) ? known : { rung, node: nodeOf(rung, press) }
  })
  before.current = new Map(drawn.map((each) => [each.rung.id, each]))
  return <RungList label={label}>{drawn.map(({ node }) => node)}</RungList>
}

const nodeOf = ({ id, state, title, value, looking, entry }: LadderRung, press: (id: string) => void): VNode => (
  <Rung key={id} state={state} title={title} value={value} looking={looking} entry={entry} onPress={() => press(id)} />
)

const isSame = (one: LadderRung, other: LadderRung): boolean =>
  one.state === other.state &&
  one.title === other.title &&
  one.value === other.value &&
  one.looking === other.looking &&
  one.entry?.id === other.entry?.id &&
  one.entry?.state === other.entry?.state
