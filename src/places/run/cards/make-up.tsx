import type { Gate } from '../../../batch/gate'
import { makeUpOf } from '../../../batch/make-up'
import type { KindOf } from '../../../batch/step'
import { askOf, nameOfLine } from '../../../batch/wording'
import { HeroNumber, SayLine } from '../../../parts/hero'
import { TypedField } from '../typed-field'
import { NoteAct, type Primary, ProcessLayout } from './layout'
import { errorOf, useStep } from './use-step'

/** Make up to weight: the vessel read on the balance says what is gone, and so how much water goes in. */
export function MakeUpCard({ step }: { step: KindOf<'make-up'> }) {
  const tools = useStep(step)
  const { run, state, format } = tools
  const gross = tools.mass('gross')
  const added = tools.mass('net')
  const grossUg = gross.kind === 'number' ? gross.value : undefined
  const makeup = makeUpOf(state, step.vessel, step.line, grossUg)
  const stepUg = 10_000
  const water = nameOfLine(state.header, step.line)
  const mass = (massUg: number) => format.massWithUnit(massUg, stepUg)
  const passed = state.steps.get(step.id)?.gatesPassed.has('ABOVE_THEORY') === true
  const above: readonly Gate[] =
    makeup.aboveUg > 0 && !passed
      ? [{ code: 'ABOVE_THEORY', key: 'ABOVE_THEORY', passable: true, aboveUg: makeup.aboveUg }]
      : []
  const send = (netUg: number) => async () => {
    const grossPart = grossUg === undefined ? {} : { grossUg }
    if (await run.act({ do: 'make-up', step: step.id, netUg, ...grossPart }, `${water} ${mass(netUg)}`))
      tools.clear('gross', 'net')
  }
  const primary = (): Primary => {
    if (!makeup.possible) return { label: 'Record', sub: 'more is gone than there was', closed: true }
    if (added.kind === 'number')
      return {
        label: `Record ${mass(added.value)} of ${water.toLowerCase()}`,
        icon: 'check',
        onPress: () => void send(added.value)(),
      }
    if (grossUg === undefined && makeup.tareUg !== undefined)
      return { label: 'Record', sub: 'type the vessel on the balance first', closed: true }
    if (makeup.toAddUg === 0) return { label: 'Nothing to add: record', icon: 'check', onPress: () => void send(0)() }
    return { label: `Weigh in ${mass(makeup.toAddUg)}`, sub: 'then type what went in', closed: true }
  }
  return (
    <ProcessLayout
      under={askOf(step, state.header)}
      gates={[...run.gates.value, ...above]}
      pad
      side={
        <div class="process-fields">
          <TypedField
            name="gross"
            label={`${tools.vesselName}, gross`}
            unit="g"
            error={errorOf(gross)}
            placeholder={makeup.grossUg === undefined ? '' : format.mass(makeup.grossUg, stepUg)}
          />
          <TypedField
            name="net"
            label={`${water} put in`}
            unit="g"
            error={errorOf(added)}
            placeholder={format.mass(makeup.toAddUg, stepUg)}
          />
        </div>
      }
      why={whyLine(makeup, mass, state.heldBackUg)}
      acts={<NoteAct />}
      primary={primary()}
    >
      <SayLine>{grossUg === undefined && makeup.tareUg !== undefined ? `If nothing is lost, add` : 'Add'}</SayLine>
      <HeroNumber text={format.mass(makeup.toAddUg, stepUg)} unit="g" size="range" />
      <p class="process-fact">
        {makeup.grossUg === undefined
          ? `${tools.vesselName} has no tare, so what evaporated cannot be read.`
          : `By the records it should weigh ${mass(makeup.grossUg)} with its tare of ${mass(makeup.tareUg ?? 0)}.`}
      </p>
    </ProcessLayout>
  )
}

function whyLine(makeup: ReturnType<typeof makeUpOf>, mass: (massUg: number) => string, heldBackUg: number) {
  const held = `${mass(heldBackUg)} was held back.`
  if (makeup.aboveUg > 0)
    return (
      <>
        <b>Reads {mass(makeup.aboveUg)} above what the records know of.</b> Look for what was not written down.
      </>
    )
  if (makeup.lossUg > 0)
    return (
      <>
        <b>{mass(makeup.lossUg)} has evaporated.</b> {held}
      </>
    )
  return held
}
