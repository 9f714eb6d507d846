import { aboveTheory, makeUpOf } from '../../../batch/make-up'
import { vesselNow } from '../../../batch/progress'
import type { KindOf } from '../../../batch/step'
import { askOf, nameOfLine } from '../../../batch/wording'
import { Button } from '../../../parts/button'
import { HeroNumber } from '../../../parts/hero'
import { SayLine } from '../../../parts/say-line'
import { TypedField } from '../typed-field'
import { NoteAct, type Primary, ProcessLayout } from './layout'
import { MakeUpTable } from './make-up-table'
import { LossAsked } from './make-up-ways'
import { factWords, type MakeUpWords, whyWords } from './make-up-words'
import { errorOf, useStep } from './use-step'

/** Make up to weight: the vessel read on the balance says what is gone, and so how much water goes in. */
export function MakeUpCard({ step }: { step: KindOf<'make-up'> }) {
  const tools = useStep(step)
  const { run, state, format } = tools
  const gross = tools.mass('gross')
  const added = tools.mass('net')
  const grossUg = gross.kind === 'number' ? gross.value : undefined
  const makeup = makeUpOf(state, step.vessel, step.line, grossUg)
  const stepUg = makeup.balance?.stepUg
  const water = nameOfLine(state.header, step.line)
  const mass = (massUg: number) => format.massWithUnit(massUg, stepUg)
  const gate = aboveTheory(makeup.aboveUg, true)
  const passed = state.steps.get(step.id)?.gatesPassed.has(gate.key) === true
  const asked = !makeup.possible || (makeup.aboveUg > 0 && !passed)
  const words: MakeUpWords = { makeup, state, mass, water, vesselName: tools.vesselName, grossUg }
  const send = (netUg: number) => async () => {
    const grossPart = grossUg === undefined ? {} : { grossUg }
    if (await run.act({ do: 'make-up', step: step.id, netUg, ...grossPart }, `${water} ${mass(netUg)}`))
      tools.clear('gross', 'net')
  }
  const primary = (): Primary => {
    if (asked) return { label: 'Record', sub: 'settle the reading first', closed: true }
    if (added.kind === 'number')
      return {
        label: `Record ${mass(added.value)} of ${water.toLowerCase()}`,
        icon: 'check',
        onPress: () => void send(added.value)(),
      }
    if (grossUg === undefined && makeup.tareUg !== undefined)
      return { label: 'Record', sub: 'type the vessel on the balance first', closed: true }
    if (makeup.proposedUg === 0)
      return { label: 'Nothing to add: record', icon: 'check', onPress: () => void send(0)() }
    return { label: `Weigh in ${mass(makeup.proposedUg)}`, sub: 'then type what went in', closed: true }
  }
  return (
    <ProcessLayout
      under={askOf(step, state.header)}
      gates={run.gates.value}
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
            placeholder={format.mass(makeup.proposedUg, stepUg)}
          />
        </div>
      }
      why={whyWords(words)}
      acts={
        <>
          {makeup.tareUg === undefined && (
            <Button
              icon="scale"
              label="Give the tare"
              onPress={() => {
                run.sheet.value = { name: 'tare', about: vesselNow(state, step.vessel) }
              }}
            />
          )}
          <NoteAct />
        </>
      }
      primary={primary()}
    >
      {asked ? (
        <LossAsked makeup={makeup} gate={gate} water={water} mass={mass} />
      ) : (
        <>
          <SayLine>{grossUg === undefined && makeup.tareUg !== undefined ? 'If nothing is lost, add' : 'Add'}</SayLine>
          <HeroNumber text={format.mass(makeup.proposedUg, stepUg)} unit="g" size="range" />
          <p class="process-fact">{factWords(words)}</p>
          <MakeUpTable step={step} />
        </>
      )}
    </ProcessLayout>
  )
}
