import './reading-hero.css'
import { useFormat } from '../../app/format'
import { sentenceOf } from '../../app/refusals'
import { HeroNumber, StateLine } from '../../parts/hero'
import { useRun } from './run-context'
import { NumberInput, TypedField } from './typed-field'
import { lastReadingUg } from './weigh-model'

/** The number on the balance, what is still to go, target and band. The number itself is the field. */
export function ReadingHero() {
  const run = useRun()
  const { mode, fields } = run.draft.value
  const plain = mode === 're-tare'
  const record = () => void run.record()
  return (
    <div class="reading">
      <div class={plain ? 'reading-number' : 'reading-number reading-derived'}>
        <HeroReading />
        {plain && (
          // A fresh field for each step: emptying one that has the focus makes the browser lay out the page at once.
          <NumberInput
            key={run.stepId.value}
            name="reading"
            label="Reading of the balance in g"
            class="reading-field"
            onEnter={record}
          />
        )}
      </div>
      {!plain && <TwoReadings />}
      <Standing />
      <SumLine text={fields.reading ?? ''} />
    </div>
  )
}

function HeroReading() {
  const run = useRun()
  const format = useFormat()
  const weighing = run.weighing.value
  const net = run.net.value
  const typed = run.draft.value.fields.reading ?? ''
  const size = run.draft.value.mode === 're-tare' ? 'normal' : 'deviation'
  if (weighing === null) return null
  if (run.draft.value.mode === 're-tare' && typed !== '' && !(net.kind === 'net' && net.sum !== undefined))
    return <HeroNumber text={typed} unit={/[a-z]/i.test(typed) ? '' : 'g'} size={size} />
  if (net.kind === 'net') return <HeroNumber text={format.mass(net.netUg, weighing.stepUg)} unit="g" size={size} />
  return <HeroNumber text={format.mass(0, weighing.stepUg)} unit="g" size={size} empty />
}

function TwoReadings() {
  const run = useRun()
  const format = useFormat()
  const weighing = run.weighing.value
  const { mode } = run.draft.value
  const last = weighing ? lastReadingUg(run.handle.view.value.state, weighing.vessel) : 0
  const record = () => void run.record()
  return (
    <div class="reading-pair">
      <TypedField
        name="before"
        label={mode === 'cumulative' ? 'Showed before' : 'Container before'}
        unit="g"
        placeholder={mode === 'cumulative' ? format.mass(last, weighing?.stepUg) : undefined}
        onEnter={() => {
          run.activeField.value = 'reading'
        }}
      />
      <TypedField
        name="reading"
        label={mode === 'cumulative' ? 'Shows now' : 'Container after'}
        unit="g"
        onEnter={record}
      />
    </div>
  )
}

/** To go, within or over, then the target with what it was before a remedy changed it. */
function Standing() {
  const run = useRun()
  const format = useFormat()
  const weighing = run.weighing.value
  const net = run.net.value
  if (weighing === null) return null
  const mass = (massUg: number) => format.mass(massUg, weighing.stepUg)
  const judged = run.judged.value
  const was = weighing.wasUg.at(-1)
  return (
    <>
      {net.kind === 'bad' ? (
        <p class="reading-bad" role="alert">
          {sentenceOf(net.refusal)}
        </p>
      ) : (
        <StateLine state={judged?.state ?? 'to-go'} text={standing(judged, weighing.leftUg, mass)} />
      )}
      <p class="reading-target">
        {weighing.countedUg > 0 ? (
          <>
            <b>{mass(weighing.countedUg)}</b> of {mass(weighing.targetUg)} g is in. The rest is{' '}
          </>
        ) : (
          <>
            Target <b>{mass(weighing.leftUg)}</b> g,{' '}
          </>
        )}
        good from <b>{mass(weighing.leftLowUg)}</b> to <b>{mass(weighing.leftHighUg)}</b>
        {was !== undefined && `, ${weighing.countedUg === 0 ? '' : 'the whole '}was ${mass(was)}`}
      </p>
    </>
  )
}

function standing(
  judged: { readonly state: 'to-go' | 'within' | 'over'; readonly byUg: number } | null,
  leftUg: number,
  mass: (massUg: number) => string,
): string {
  if (judged === null) return `${mass(leftUg)} g to go`
  if (judged.state === 'within') return 'within'
  return `${mass(judged.byUg)} g ${judged.state === 'over' ? 'over' : 'to go'}`
}

/** A typed sum stays in sight beside what it comes to. */
function SumLine({ text }: { text: string }) {
  const net = useRun().net.value
  if (net.kind === 'reckoning') return <p class="reading-sum">{text} =</p>
  return net.kind === 'net' && net.sum !== undefined ? <p class="reading-sum">{net.sum} = the number above</p> : null
}
