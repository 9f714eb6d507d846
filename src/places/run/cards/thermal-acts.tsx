import { Button } from '../../../parts/button'
import { FinishEarlyAct, MeanwhileAct, NoteAct } from './layout'
import type { ThermalAct } from './thermal-act'

/** The quiet buttons of a thermometer's card. */
export function ThermalActs(act: ThermalAct) {
  const { clock, typing, entries, view } = act
  if (clock !== null)
    return (
      <>
        <MeanwhileAct />
        <FinishEarlyAct label="Go on, say why" />
        <NoteAct />
      </>
    )
  if (entries.meantC !== null) return <AsTyped {...act} />
  if (typing.is) return <TypingActs {...act} />
  if (view.forecast?.outlook.kind === 'contradiction') return <StrikeActs {...act} />
  return <CurveActs {...act} />
}

/** It was °C after all. */
function AsTyped({ entries, format }: ThermalAct) {
  if (entries.temperature.kind !== 'number') return null
  return (
    <Button
      icon="thermometer"
      label={`It is ${format.number(entries.temperature.value)} °C`}
      onPress={() => void entries.recordReading('typed')}
    />
  )
}

function TypingActs({ typing, entries, view }: ThermalAct) {
  const canShow = (view.course?.readings.length ?? 0) > 0 && view.forecast?.outlook.kind !== 'ask'
  const { agoMinutes } = entries
  return (
    <>
      {canShow ? <Button icon="arrow-left" label="The curve" onPress={typing.close} /> : <MeanwhileAct />}
      <Button
        icon="clock"
        label={agoMinutes === 0 ? 'Read just now' : `Read ${agoMinutes} min ago`}
        sub="tap for earlier"
        onPress={entries.laterStill}
      />
      <FinishEarlyAct label="Go on, say why" />
    </>
  )
}

function CurveActs(act: ThermalAct) {
  const { typing, reached, view } = act
  const { waiting } = view
  return (
    <>
      {(reached || waiting) && <Button icon="thermometer" label="Type a reading" onPress={typing.open} />}
      {!reached && !waiting && <MeanwhileAct />}
      {!reached && <ChangeAct {...act} />}
      {reached ? <NoteAct /> : <FinishEarlyAct label="Go on, say why" />}
    </>
  )
}

/** Another bath, a cover off: what was read before tells nothing of after. */
function ChangeAct({ run, change, view }: ThermalAct) {
  const vessel = view.course?.vessel ?? ''
  return (
    <Button
      icon={change.icon}
      label={change.label}
      onPress={() => void run.act({ do: 'change-bath', vessel, what: change.what }, change.label)}
    />
  )
}

/** One of two readings cannot be right: either can be struck out, or the bath was changed. */
function StrikeActs(act: ThermalAct) {
  const { run, view, format } = act
  const { forecast } = view
  if (forecast?.outlook.kind !== 'contradiction') return null
  const { earlier, later } = forecast.outlook
  const counting = forecast.course.readings.filter(({ atMs }) => atMs >= forecast.course.sinceMs)
  const strikes = [counting[earlier], counting[later]].map(
    (reading) =>
      reading && (
        <Button
          key={reading.entry}
          icon="x"
          label={`Strike out ${format.number(reading.temperatureC)} °C`}
          sub={format.time(reading.atMs)}
          onPress={() => {
            run.sheet.value = { name: 'strike', about: reading.entry }
          }}
        />
      ),
  )
  return (
    <>
      {strikes}
      <ChangeAct {...act} />
    </>
  )
}
