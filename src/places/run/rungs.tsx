import type { VNode } from 'preact'
import { useRef } from 'preact/hooks'
import { Rung, RungList } from '../../parts/rung'
import type { LadderRung } from './ladder-of'
import { useRun } from './run-context'

interface Drawn {
  readonly rungs: readonly LadderRung[]
  readonly nodes: readonly (VNode | undefined)[]
  readonly list: VNode
}

/** A ladder can be long: the browser leaves out lists that are out of sight, and a rung by itself costs it more than that. */
const mostInList = 16

/** The steps of an open phase. What shows what it showed before is not drawn again. */
export function Rungs({ label, rungs }: { label: string; rungs: readonly LadderRung[] }) {
  const run = useRun()
  const before = useRef<readonly Drawn[]>([])
  const press = (id: string) => {
    run.take(id)
    if (run.sheet.value?.name === 'steps') run.sheet.value = null
  }
  const drawn: Drawn[] = []
  for (let from = 0; from < rungs.length; from += mostInList) {
    const name = from === 0 ? label : `${label}, from ${from + 1}`
    drawn.push(draw(name, rungs.slice(from, from + mostInList), press, before.current[drawn.length]))
  }
  before.current = drawn
  return <>{drawn.map(({ list }) => list)}</>
}

function draw(label: string, rungs: readonly LadderRung[], press: (id: string) => void, known?: Drawn): Drawn {
  const nodes = rungs.map((rung, at) => {
    const { id, ...shown } = rung
    return isSame(rung, known?.rungs[at]) ? known?.nodes[at] : <Rung key={id} {...shown} onPress={() => press(id)} />
  })
  if (known?.nodes.length === nodes.length && nodes.every((node, at) => node === known.nodes[at])) return known
  const list = (
    <RungList key={label} label={label} rungs={rungs.length}>
      {nodes}
    </RungList>
  )
  return { rungs, nodes, list }
}

const isSame = (one: LadderRung, other: LadderRung | undefined): boolean =>
  one.id === other?.id &&
  one.state === other.state &&
  one.title === other.title &&
  one.value === other.value &&
  one.looking === other.looking &&
  one.entry?.id === other.entry?.id &&
  one.entry?.state === other.entry?.state
