import './layout.css'
import type { ComponentChildren } from 'preact'
import type { Gate } from '../../../batch/gate'
import { nextActionOf } from '../../../batch/next-action'
import { nextStep } from '../../../batch/progress'
import { titleOf } from '../../../batch/wording'
import { Button } from '../../../parts/button'
import { Card } from '../../../parts/card'
import { classes } from '../../../parts/classes'
import type { IconName } from '../../../parts/icon'
import { Caution } from '../../../parts/notice'
import { Pad } from '../hand'
import { Messages } from '../messages'
import { useRun } from '../run-context'
import { StepHeading } from './step-heading'

/** The one filled button of a card; `closed` says why it cannot be pressed yet. */
export interface Primary {
  readonly label: string
  readonly sub?: string | undefined
  readonly icon?: IconName
  readonly closed?: boolean
  readonly onPress?: () => void
}

interface ProcessLayoutProps {
  /** What the step asks for, under its name. */
  under: string
  caution?: string | undefined
  cautionIcon?: IconName | undefined
  gates?: readonly Gate[]
  /** A fact at the right of the name, such as the lot. */
  fact?: ComponentChildren
  /** The number of the card, on the left. */
  children: ComponentChildren
  /** What was read so far, and the fields that the pad types into. */
  side?: ComponentChildren
  pad?: boolean
  /** A plot at the side: the number gives it room, and the instruction waits for what is done next. */
  chart?: boolean
  why?: ComponentChildren
  /** Two quiet buttons at most. */
  acts?: ComponentChildren
  primary: Primary
}

/** Name, number and why on the left; readings, pad and the one thing to press on the side of the writing hand. */
export function ProcessLayout(props: ProcessLayoutProps) {
  const run = useRun()
  const planned = run.planned.value
  if (planned === null) return null
  const { header } = run.handle.view.value.state
  const caution = props.caution ?? planned.step.caution
  const { primary, pad = false, chart = false } = props
  const act = () => {
    if (!primary.closed) primary.onPress?.()
  }
  return (
    <Card
      lip="action"
      labelledBy="step-heading"
      class={classes('process', pad && 'process-pad', chart && 'process-chart')}
    >
      <div class="process-left">
        <header class="eye-head">
          <div class="eye-title">
            <StepHeading text={titleOf(planned.step, header)} />
            <p class="eye-under">{(chart ? undefined : planned.step.instruction) ?? props.under}</p>
          </div>
          {props.fact}
        </header>
        {caution && <Caution icon={props.cautionIcon} text={caution} />}
        <Messages gates={props.gates ?? []} />
        <div class="process-number">{props.children}</div>
      </div>
      <div class="process-side">
        {props.side}
        {pad && <Pad onEnter={act} />}
      </div>
      {props.why && <p class="process-why">{props.why}</p>}
      <div class="process-foot">
        <div class="process-acts">{props.acts}</div>
        <Button
          kind={primary.closed ? 'closed' : 'filled'}
          size="primary"
          icon={primary.icon}
          label={primary.label}
          sub={primary.sub}
          onPress={act}
          full
        />
      </div>
    </Card>
  )
}

export function NoteAct() {
  const run = useRun()
  return (
    <Button
      icon="pencil"
      label="Note"
      onPress={() => {
        run.sheet.value = { name: 'note' }
      }}
    />
  )
}

/** While something takes its time: what else can be done now. Absent where nothing else is open. */
export function MeanwhileAct() {
  const run = useRun()
  const { state } = run.handle.view.value
  const next = nextStep(state)
  if (next === null || next.id === run.stepId.value) return null
  return (
    <Button icon="arrow-right" label="Meanwhile" sub={nextActionOf(state, next)} onPress={() => run.take(next.id)} />
  )
}

/** Opens the first thing that stands in the way of finishing, to be passed with a reason. */
export function FinishEarlyAct({ label }: { label: string }) {
  const run = useRun()
  const gate = run.finishGates.value.find(({ code }) => code !== 'ORDER')
  if (gate === undefined) return null
  return (
    <Button
      icon="flag"
      label={label}
      onPress={() => {
        run.sheet.value = { name: 'gate', gate }
      }}
    />
  )
}
