import type { ComponentChildren } from 'preact'
import type { KindOf } from '../../../batch/step'
import { HeroNumber } from '../../../parts/hero'
import { SayLine } from '../../../parts/say-line'
import { massIn } from '../../../trade/ledger'
import { NoteAct, ProcessLayout } from './layout'
import { useStep } from './use-step'

interface TakenCardProps {
  step: KindOf<'sample'> | KindOf<'fill'>
  under: string
  massUg: number
  /** "2 jars" */
  words: string
  bad: boolean
  send: (words: string) => Promise<boolean>
  fields: ComponentChildren
  children?: ComponentChildren
}

/** Product that leaves its vessel: how many, how much, and what stays. */
export function TakenCard({ step, under, massUg, words, bad, send, fields, children }: TakenCardProps) {
  const { run, state, format, vessel, vesselName } = useStep(step)
  const heldUg = massIn(state.ledger, vessel)
  const label = `Record ${words}, ${format.massWithUnit(massUg)}`
  return (
    <ProcessLayout
      under={under}
      gates={run.gates.value}
      pad
      side={<div class="process-fields">{fields}</div>}
      why={`${vesselName} holds ${format.massWithUnit(heldUg)}; ${format.massWithUnit(Math.max(0, heldUg - massUg))} stays by the books.`}
      acts={<NoteAct />}
      primary={{
        label,
        icon: 'check',
        closed: bad,
        onPress: () => void send(`${words}, ${format.massWithUnit(massUg)}`),
      }}
    >
      <SayLine>{words}</SayLine>
      <HeroNumber text={format.mass(massUg)} unit="g" size="range" />
      {children}
    </ProcessLayout>
  )
}
