import { useEffect } from 'preact/hooks'
import type { Unsaved } from '../../app/app'
import { useFormat } from '../../app/format'
import { HealNotice } from '../../app/heal-notice'
import { gateWords, type Refusal, sentenceOf } from '../../app/refusals'
import type { Gate } from '../../batch/gate'
import { titleOf } from '../../batch/wording'
import { GateBar, NotSavedBar, UndoBar } from '../../parts/bars'
import { Button } from '../../parts/button'
import { copyText } from '../../parts/copy-text'
import { Notice } from '../../parts/notice'
import { Elsewhere } from './elsewhere'
import { useRun } from './run-context'

export interface MessagesProps {
  readonly gates: readonly Gate[]
  /** Whether what was just recorded is said, with its way back. */
  readonly undo?: boolean
}

/** What a step wants to say before its number: what is not saved, what closes it, what was refused, what was done. */
export function MessagesSaid({ gates, undo = true }: MessagesProps) {
  const run = useRun()
  const refusal = run.refusal.value
  const asked = refusal?.code === 'GATE' ? [...gates, ...refusal.gates] : gates
  const [gate, ...others] = asked.filter(
    ({ code, key }, index) => code !== 'DEVIATION_OPEN' && asked.findIndex((each) => each.key === key) === index,
  )
  return (
    <>
      {run.handle.unsaved.value.map((unsaved) => (
        <UnsavedBar key={unsaved.atMs} unsaved={unsaved} />
      ))}
      <HealNotice />
      <Stage />
      <Refused />
      {gate && <Closed gate={gate} others={others} />}
      {undo && <JustDone />}
      <Elsewhere />
    </>
  )
}

function UnsavedBar({ unsaved }: { unsaved: Unsaved }) {
  const run = useRun()
  const format = useFormat()
  const { state } = run.handle.view.value
  const words = unsavedWords(
    unsaved,
    (id) => {
      const planned = state.plan.byId.get(id)
      return planned ? titleOf(planned.step, state.header) : id
    },
    format.massWithUnit,
  )
  // The reason is a storage code; the type of the handle keeps it a plain text.
  const why = sentenceOf({ code: unsaved.reason } as Refusal)
  if (unsaved.state === 'held')
    return (
      <Notice kind="caution" icon="hand" title={`${words} is held`} live>
        <p data-state="held">{why}</p>
      </Notice>
    )
  return (
    <div data-state="not-saved">
      <NotSavedBar
        title={`${words} is not saved yet`}
        detail={why}
        onCopy={() => copyText(`${state.header.code} · ${words} · ${format.dateTime(unsaved.atMs)}`)}
        onRetry={() => void run.retry()}
        onDrop={unsaved.reason === 'HELD_REFUSED' ? () => run.handle.drop(unsaved) : undefined}
      />
    </div>
  )
}

function unsavedWords(
  { intention }: Unsaved,
  titleOfStep: (id: string) => string,
  mass: (massUg: number) => string,
): string {
  const about = 'step' in intention && intention.step !== undefined ? titleOfStep(intention.step) : ''
  if (intention.do === 'weigh') {
    const { reading } = intention
    const netUg =
      reading.mode === 're-tare'
        ? reading.readingUg
        : reading.mode === 'cumulative'
          ? reading.readingUg - reading.previousUg
          : reading.beforeUg - reading.afterUg
    return `${about} ${mass(netUg)}`
  }
  const plain = intention.do.replaceAll('-', ' ')
  return about === '' ? `“${plain}”` : `${about}, “${plain}”`
}

function Stage() {
  const run = useRun()
  const { stage, unknownKinds } = run.handle.view.value.state
  if (unknownKinds.size > 0)
    return (
      <Notice kind="caution" title="This batch can be read, not continued">
        <p>A newer version of the app wrote to it. Take the newer app first.</p>
      </Notice>
    )
  if (stage === 'parked')
    return (
      <GateBar
        title="This batch is put aside"
        detail="Nothing can be recorded until it is taken up again."
        label="Take it up again"
        onGoOn={() => void run.act({ do: 'resume' })}
      />
    )
  if (stage !== 'in-hand') return <Notice title={`This batch is ${stage}. Its record can be read under Records.`} />
  return null
}

function Refused() {
  const run = useRun()
  const refusal = run.refusal.value
  // A gate is said by its own bar.
  const unsigned = refusal?.code === 'SIGNATURE_MISSING'
  const sign = () => {
    run.sheet.value = { name: 'sign' }
  }
  useEffect(() => {
    if (unsigned) sign()
  }, [unsigned])
  if (refusal === null || refusal.code === 'GATE') return null
  return (
    <Notice kind={unsigned ? 'info' : 'over'} title={sentenceOf(refusal)} live>
      {unsigned && <Button kind="outline" label="Sign" onPress={sign} />}
    </Notice>
  )
}

/** The first thing in the way with its way past; the others by name, so that none comes as a surprise after it. */
function Closed({ gate, others }: { gate: Gate; others: readonly Gate[] }) {
  const run = useRun()
  const format = useFormat()
  const { state } = run.handle.view.value
  const { title, text } = gateWords(gate, state, format)
  const also = others.map((each) => gateWords(each, state, format).title).join('; ')
  const pass = () => {
    run.sheet.value = { name: 'gate', gate }
  }
  const detail = also === '' ? text : `${text} Also: ${also}.`
  return <GateBar title={title} detail={detail} label={wayPast(gate)} {...(gate.passable ? { onGoOn: pass } : {})} />
}

/** Where the missing thing can be given at once, the button says so. */
function wayPast(gate: Gate): string | undefined {
  if (gate.code === 'TEMPERATURE_OLD' || gate.code === 'TEMPERATURE_UNKNOWN') return 'Read it, or say why'
  if (gate.code === 'NO_TARE') return 'Give it, or say why'
  return undefined
}

function JustDone() {
  const { app } = useRun()
  const done = app.justDone.value
  if (done === null) return null
  return (
    <UndoBar
      key={done.atMs}
      text={done.text}
      value=""
      onUndo={() => void done.undo()}
      onGone={() => {
        if (app.justDone.peek() === done) app.justDone.value = null
      }}
    />
  )
}
