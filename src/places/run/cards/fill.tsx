import { type Format, useFormat } from '../../../app/format'
import type { KindOf } from '../../../batch/step'
import { askOf } from '../../../batch/wording'
import { massIn } from '../../../trade/ledger'
import { TypedField } from '../typed-field'
import { TakenCard } from './taken'
import { errorOf, useStep, valueOr } from './use-step'

/** The batch filled into its packs; the vessel read before and after tells what the packs do not. */
export function FillCard({ step }: { step: KindOf<'fill'> }) {
  const tools = useStep(step)
  const { run, state, format, vessel } = tools
  const units = tools.number('units')
  const heldUg = massIn(state.ledger, vessel)
  const fits = step.eachUg === undefined ? 1 : Math.max(1, Math.floor(heldUg / step.eachUg))
  const planned = step.units ?? fits
  const count = valueOr(units, planned)
  const planUg = Math.min(step.eachUg === undefined ? heldUg : Math.round(count * step.eachUg), heldUg)
  const [mass, before, after] = [tools.mass('mass'), tools.mass('before'), tools.mass('after')]
  const massUg = valueOr(mass, planUg)
  const read = {
    ...(before.kind === 'number' ? { grossBeforeUg: before.value } : {}),
    ...(after.kind === 'number' ? { grossAfterUg: after.value } : {}),
  }
  const send = async (words: string) => {
    const taken = await run.act({ do: 'fill', step: step.id, vessel, massUg, units: count, ...read }, words)
    if (taken) tools.clear('units', 'mass', 'before', 'after')
    return taken
  }
  return (
    <TakenCard
      step={step}
      under={[askOf(step, state.header), step.eachUg === undefined ? '' : `${format.massWithUnit(step.eachUg)} each`]
        .filter(Boolean)
        .join(', ')}
      massUg={massUg}
      words={`${format.number(count)} ${count === 1 ? 'unit' : 'units'}`}
      bad={[units, mass, before, after].some(({ kind }) => kind === 'bad')}
      send={send}
      fields={
        <>
          <TypedField name="units" label="Units" placeholder={String(planned)} error={errorOf(units)} />
          <TypedField name="mass" label="In all" unit="g" placeholder={format.mass(planUg)} error={errorOf(mass)} />
          <TypedField name="before" label="Vessel before" unit="g" error={errorOf(before)} />
          <TypedField name="after" label="Vessel after" unit="g" error={errorOf(after)} />
        </>
      }
    >
      <ByTheVessel
        massUg={massUg}
        heldUg={heldUg}
        tareUg={state.vessels.get(vessel)?.tareUg}
        beforeUg={before.kind === 'number' ? before.value : undefined}
        afterUg={after.kind === 'number' ? after.value : undefined}
      />
    </TakenCard>
  )
}

interface ReadVessel {
  massUg: number
  heldUg: number
  tareUg: number | undefined
  beforeUg: number | undefined
  afterUg: number | undefined
}

/** What left the vessel against what the units hold, and what stays in it against the books. */
function ByTheVessel({ massUg, heldUg, tareUg, beforeUg, afterUg }: ReadVessel) {
  const format = useFormat()
  if (afterUg === undefined)
    return <p class="process-fact">Read the vessel after the last unit: what stays in it is then accounted for.</p>
  const lines = [
    ...(beforeUg === undefined ? [] : [lighterWords(beforeUg - afterUg, massUg, format)]),
    ...(tareUg === undefined ? [] : [staysWords(afterUg - tareUg, heldUg - massUg, format)]),
  ]
  return (
    <>
      {lines.map((line) => (
        <p key={line} class="process-fact">
          {line}
        </p>
      ))}
    </>
  )
}

function lighterWords(lighterUg: number, massUg: number, format: Format): string {
  const byUg = lighterUg - massUg
  const left = `${format.massWithUnit(lighterUg)} left the vessel`
  if (byUg === 0) return `${left}, as much as the units hold.`
  return `${left}, ${format.massWithUnit(Math.abs(byUg))} ${byUg > 0 ? 'more' : 'less'} than the units hold.`
}

function staysWords(staysUg: number, booksUg: number, format: Format): string {
  const byUg = booksUg - staysUg
  const stays = `${format.massWithUnit(staysUg)} stays in it`
  if (byUg === 0) return `${stays}, as the books say.`
  return `${stays}; ${format.massWithUnit(Math.abs(byUg))} ${byUg > 0 ? 'is unexplained' : 'more than the books know of'}.`
}
