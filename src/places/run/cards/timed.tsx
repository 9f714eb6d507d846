import type { ComponentChildren } from 'preact'
import type { KindOf } from '../../../batch/step'
import { titleOf } from '../../../batch/wording'
import { HeroNumber, StateLine } from '../../../parts/hero'
import { ReasonChips } from '../../../parts/reason-chips'
import { SayLine } from '../../../parts/say-line'
import { finishWithClock } from './finish-with-clock'
import { FinishEarlyAct, MeanwhileAct, NoteAct, type Primary, ProcessLayout } from './layout'
import { SecondPerson } from './second-person'
import { useClock } from './use-clock'
import { useStep } from './use-step'

interface TimedCardProps {
  step: KindOf<'hold'> | KindOf<'hydrate'> | KindOf<'mix'> | KindOf<'deaerate'> | KindOf<'rest'>
  minutes: number
  under: string
  /** The condition that starts the clock: "lump-free". */
  startsWhen?: string | undefined
  /** "Hydrating" */
  doing: string
  /** What may be seen at the end, one tap each. */
  sees: readonly string[]
  why?: string | undefined
  /** Fields above what was seen; with `pad` they are typed on it. */
  fields?: ComponentChildren
  pad?: boolean
  /** Facts under the clock. */
  below?: ComponentChildren
  /** What is written down with the end of the step; `bad` where something of it cannot be read. */
  more?: { readonly toolRpm?: number; readonly toolMm?: number }
  bad?: boolean
  onFinish?: () => void
}

/** A step that takes its time: the clock starts when its condition is met, and says when it is over. */
export function TimedCard(props: TimedCardProps) {
  const {
    step,
    minutes,
    under,
    startsWhen,
    doing,
    sees,
    why,
    fields,
    pad = false,
    below,
    more,
    bad = false,
    onFinish,
  } = props
  const tools = useStep(step)
  const { run, state, format } = tools
  const clock = useClock(step.id)
  const long = lengthOf(minutes)
  const title = titleOf(step, state.header)
  const start = () => void run.act({ do: 'start-timer', label: title, minutes, step: step.id })
  const finish = () => {
    onFinish?.()
    const saw = tools.text('saw')
    const checkedBy = tools.text('checkedBy')
    void finishWithClock(run, step.id, clock, {
      ...(saw === '' ? {} : { saw }),
      ...(checkedBy === '' ? {} : { checkedBy }),
      ...more,
    })
  }
  const primary = (): Primary => {
    if (clock === null)
      return {
        ...startWords(startsWhen, long),
        icon: 'hourglass',
        onPress: start,
      }
    const passed = run.finishGates.value.length === 0
    if (!passed)
      return {
        label: `${format.duration(clock.leftMs)} to go`,
        sub: `over at ${format.time(clock.deadlineAtMs)}`,
        closed: true,
      }
    return { label: `${title}: done`, icon: 'check', closed: bad, onPress: finish }
  }
  const over = clock !== null && clock.leftMs <= 0
  const seen = clock !== null && (
    <ReasonChips
      label="What you see"
      options={sees}
      other="In your own words"
      value={tools.text('saw')}
      onChange={(saw) => run.type('saw', saw)}
    />
  )
  return (
    <ProcessLayout
      under={under}
      gates={run.gates.value}
      pad={pad}
      side={
        <>
          {fields}
          {!pad && seen}
          {clock !== null && step.secondPerson && <SecondPerson />}
        </>
      }
      why={why}
      acts={
        <>
          {clock !== null && <MeanwhileAct />}
          {clock !== null && !over && <FinishEarlyAct label="Finish early" />}
          <NoteAct />
        </>
      }
      primary={primary()}
    >
      {clock === null ? (
        <>
          <SayLine>{startsWhen ? `Once ${startsWhen}` : doing}</SayLine>
          <HeroNumber text={format.duration(minutes * 60_000)} size="range" empty />
          <StateLine state="to-go" text={startsWhen ? 'the clock starts then' : 'not started'} />
        </>
      ) : (
        <>
          <SayLine>{over ? `${title}: time is over` : doing}</SayLine>
          <HeroNumber text={format.duration(clock.leftMs)} size="range" unit={over ? 'late' : ''} />
          <StateLine
            state={over ? 'within' : 'waiting'}
            text={over ? `since ${format.time(clock.deadlineAtMs)}` : `until ${format.time(clock.deadlineAtMs)}`}
          />
        </>
      )}
      {below}
      {pad && seen}
    </ProcessLayout>
  )
}

/** The condition is the button: "Lump-free: start 20 min". A long one stands in the line beneath. */
function startWords(when: string | undefined, long: string): Pick<Primary, 'label' | 'sub'> {
  if (when === undefined) return { label: `Start ${long}` }
  if (when.length <= 12) return { label: `${capital(when)}: start ${long}` }
  return { label: `Start ${long}`, sub: when }
}

const lengthOf = (minutes: number): string => (minutes >= 120 ? `${minutes / 60} h` : `${minutes} min`)

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1)
