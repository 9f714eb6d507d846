import './records.css'
import './record.css'
import './paper-table.css'
import './print.css'
import './stability.css'
import { useEffect, useMemo, useState } from 'preact/hooks'
import { useApp } from '../../app/app'
import { useFormat } from '../../app/format'
import { jarAddress, jarParts } from '../../app/jar-address'
import { latePart } from '../../app/late-part'
import { sentenceOf } from '../../app/refusals'
import { addressOf } from '../../app/routes'
import { standingOf } from '../../batch/pulls'
import type { Stability } from '../../batch/stability'
import { Button } from '../../parts/button'
import { EmptyState } from '../../parts/empty'
import { Notice } from '../../parts/notice'
import { Courses } from './courses'
import { JarList } from './jar-list'
import { JarValues } from './jar-values'
import { createStabilityModel, type StabilityModel } from './stability-model'
import { enterWords } from './stability-words'

const PlanSheet = latePart(() => import('./stability-plan-sheet'), 'PlanSheet')

/** The kept jars of one batch: the plan, what is to be pulled, how every measure goes. */
export function StabilityPage({ batch }: { batch: string }) {
  const app = useApp()
  const model = useMemo(() => createStabilityModel(app, batch), [app, batch])
  const [planning, setPlanning] = useState(false)
  useEffect(() => void model.open(), [model])
  const state = model.state.value
  const stability = model.stability.value
  if (model.sight.value === 'missing') return <Missing />
  if (state === null) return <main class="stability" aria-busy="true" />
  const plan = () => setPlanning(true)
  return (
    <main class="stability">
      <Tools batch={batch} stability={stability} onPlan={plan} />
      <header class="stability-head">
        <h1>Kept jars of {state.header.code}</h1>
        <p>
          {state.header.formulaName}, revision {state.header.revision.number}
        </p>
      </header>
      {stability === null ? (
        <EmptyState
          title="No jars are planned yet"
          text="A plan says how the jars are kept, on which days one of each is pulled, and what is read. It begins with a template."
          actions={<Button kind="filled" icon="plus" label="Make a plan" onPress={plan} />}
        />
      ) : (
        <Sections model={model} stability={stability} batch={batch} />
      )}
      {planning && <PlanSheet model={model} state={state} onClose={() => setPlanning(false)} />}
    </main>
  )
}

interface ToolsProps {
  batch: string
  stability: Stability | null
  onPlan: () => void
}

function Tools({ batch, stability, onPlan }: ToolsProps) {
  const nowMs = useApp().nowMs.value
  const due = stability?.pulls.filter((pull) => pull.left.length > 0 && isOpen(pull, nowMs)).length ?? 0
  return (
    <div class="record-tools">
      <Button kind="plain" icon="arrow-left" label="Record" href={addressOf({ place: 'records', batch })} />
      {stability && due > 0 && (
        <Button kind="filled" icon="clipboard-check" label={enterWords(due)} href={jarAddress(batch, jarParts.today)} />
      )}
      {stability && <Button icon="pencil" label="Change the plan" onPress={onPlan} />}
      {stability && <Button icon="square" label="Jar labels" href={jarAddress(batch, jarParts.labels)} />}
      {stability && <Button icon="printer" label="Print" onPress={() => window.print()} />}
    </div>
  )
}

const isOpen = (pull: Stability['pulls'][number], nowMs: number): boolean =>
  ['due', 'late'].includes(standingOf(pull, nowMs))

function Sections({ model, stability, batch }: { model: StabilityModel; stability: Stability; batch: string }) {
  const format = useFormat()
  const { plan } = stability
  return (
    <>
      <p class="stability-plan">
        {plan.name}: set aside on {format.date(plan.startsAtMs)}, at{' '}
        {plan.conditions.map(({ label }) => label).join(', ')}; read are{' '}
        {plan.measures.map(({ label }) => label).join(', ')}.
      </p>
      <Cycles model={model} stability={stability} />
      <JarList batch={batch} pulls={stability.pulls} />
      <Courses courses={model.courses.value} />
      <JarValues stability={stability} />
    </>
  )
}

/** How often the jars that go through cycles were frozen and thawed. */
function Cycles({ model, stability }: { model: StabilityModel; stability: Stability }) {
  const [wrong, setWrong] = useState<string | null>(null)
  const count = async (condition: string) => {
    const refusal = await model.write({ do: 'count-cycle', condition })
    setWrong(refusal === null ? null : sentenceOf(refusal))
  }
  return (
    <>
      {stability.plan.conditions.map(({ id, label, cycles }) => {
        if (cycles === undefined) return null
        const [counted, most] = [stability.cycles.get(id) ?? 0, Math.max(...cycles.pulls)]
        return (
          <div key={id} class="stability-cycles">
            <p>
              {label}: <strong>{`${counted} of ${most} cycles`}</strong> counted
            </p>
            {counted < most && <Button icon="plus" label="Count one more cycle" onPress={() => void count(id)} />}
          </div>
        )
      })}
      {wrong && <Notice kind="over" title={wrong} live />}
    </>
  )
}

function Missing() {
  return (
    <main class="stability">
      <EmptyState
        title="This batch is not here"
        text="It may be in a file that has not been brought in on this tablet."
        actions={<Button kind="filled" label="To the records" href={addressOf({ place: 'records' })} />}
      />
    </main>
  )
}
