import type { ComponentChildren } from 'preact'
import { vesselNow } from '../../../batch/progress'
import type { KindOf } from '../../../batch/step'
import { nameOfVessel } from '../../../batch/vessel-name'
import { HeroNumber } from '../../../parts/hero'
import { SayLine } from '../../../parts/say-line'
import { massIn } from '../../../trade/ledger'
import { TypedField } from '../typed-field'
import { NoteAct, type Primary, ProcessLayout } from './layout'
import { errorOf, useStep, valueOr } from './use-step'

interface EmptyingCardProps {
  step: KindOf<'charge'> | KindOf<'combine'>
  from: string
  under: string
  why: string
  /** Fields above residue and rinse, such as the two temperatures. */
  fields?: ComponentChildren
  /** What is to be recorded before the emptying itself. */
  first?: Primary | undefined
}

/** One vessel emptied into another: how much goes over, what clings to the wall, what it is rinsed with. */
export function EmptyingCard({ step, from, under, why, fields, first }: EmptyingCardProps) {
  const tools = useStep(step)
  const { run, state, format } = tools
  const into = vesselNow(state, step.vessel)
  const fromName = nameOfVessel(state, from)
  const residue = tools.mass('residue')
  const rinse = tools.mass('rinse')
  const rinseUg = valueOr(rinse, 0)
  const heldUg = massIn(state.ledger, from) + rinseUg
  const goesUg = Math.max(0, heldUg - valueOr(residue, 0))
  const stepUg = state.header.balances.map(({ stepUg }) => stepUg).sort((a, b) => a - b)[0]
  const send = async () => {
    const words = `${fromName} ${format.massWithUnit(goesUg, stepUg)}`
    const amounts = { residueUg: valueOr(residue, 0), rinseUg }
    if (await run.act({ do: step.kind, step: step.id, ...amounts }, words)) tools.clear('residue', 'rinse')
  }
  const bad = residue.kind === 'bad' || rinse.kind === 'bad'
  const blocked = run.gates.value.length > 0
  const primary: Primary = first ?? {
    label: `${fromName} is in: record`,
    sub: `${format.massWithUnit(goesUg, stepUg)} into ${nameOfVessel(state, into)}`,
    icon: 'arrow-right',
    closed: bad || blocked,
    onPress: () => void send(),
  }
  return (
    <ProcessLayout
      under={under}
      gates={run.gates.value}
      pad
      side={
        <div class="process-fields">
          {fields}
          <TypedField
            name="residue"
            label="Left in it"
            unit="g"
            placeholder={format.mass(0, stepUg)}
            error={errorOf(residue)}
          />
          <TypedField
            name="rinse"
            label={step.rinse ? 'Rinsed with water' : 'Rinsed with'}
            unit="g"
            placeholder={format.mass(0, stepUg)}
            error={errorOf(rinse)}
          />
        </div>
      }
      why={
        <>
          {why}{' '}
          {state.heldBackUg > 0 &&
            `${format.massWithUnit(state.heldBackUg)} of water is held back for rinses and make-up.`}
        </>
      }
      acts={<NoteAct />}
      primary={primary}
    >
      <SayLine>
        {fromName} into {nameOfVessel(state, into)}
      </SayLine>
      <HeroNumber text={format.mass(goesUg, stepUg)} unit="g" size="range" />
      <p class="process-fact">
        {valueOr(residue, 0) > 0
          ? `${format.mass(valueOr(residue, 0), stepUg)} g stays in ${fromName} and is booked as left behind.`
          : 'Weigh it empty and type what clings to it, or leave that at nought.'}
      </p>
    </ProcessLayout>
  )
}
