import { useFormat } from '../../../app/format'
import { sentenceOf } from '../../../app/refusals'
import { toolSetting } from '../../../app/tools'
import { NumberField } from '../../../parts/number-field'
import { Sheet } from '../../../parts/sheet'
import { massIn } from '../../../trade/ledger'
import { rpmAtPowerPerVolume, rpmAtTipSpeed, type Stirring, tipSpeed } from '../../../trade/mixing'
import { useRun } from '../run-context'
import type { Typed } from '../typed'
import type { SheetPartProps } from './sheet-part'
import { useSheetDraft } from './use-sheet-draft'

/** Which speed another tool in another size asks for: two guides, said as such. */
export function ScaleUpSheet({ onClose }: SheetPartProps) {
  const run = useRun()
  const format = useFormat()
  const draft = useSheetDraft('scale-up', onClose)
  const step = run.planned.value?.step
  if (step?.kind !== 'mix') return null
  const { state } = run.handle.view.value
  const typedHere = (field: string): Typed => run.reckoner.number(run.draft.value.fields[field] ?? '')
  const typed = (field: string): Typed => run.reckoner.number(draft.text(field))
  const mass = run.reckoner.mass(draft.text('mass'), { negative: false, zero: false })
  const from: Stirring | null = stirringOf(
    worthOf(typedHere('rpm')) ?? middleOf(step.rpm),
    worthOf(typedHere('across')) ?? run.app.settings.value.value[toolSetting(step.tool)],
    massIn(state.ledger, step.vessel) || state.totalUg,
  )
  const across = typed('across')
  const toMm = worthOf(across)
  const toUg = worthOf(mass)
  const ready = from !== null && toMm !== undefined && toMm > 0
  return (
    <Sheet title="When scaling up" onClose={onClose}>
      {from === null ? (
        <p>Type the speed and how far the tool is across on the card first.</p>
      ) : (
        <p>
          Here: {format.number(from.rpm)} rpm, {format.number(from.diameterMm)} mm across,{' '}
          {format.massWithUnit(from.volume)}. Tip speed {format.number(tipSpeed(from.rpm, from.diameterMm), 2)} m/s.
        </p>
      )}
      <NumberField
        label="Other tool, across"
        unit="mm"
        value={draft.text('across')}
        error={errorIn(across)}
        onChange={(text) => draft.set('across', text)}
      />
      <NumberField
        label="Other batch"
        unit="g"
        value={draft.text('mass')}
        error={mass.kind === 'bad' ? sentenceOf(mass.refusal) : undefined}
        onChange={(text) => draft.set('mass', text)}
      />
      {ready && (
        <dl class="scale-up">
          <dt>Same tip speed</dt>
          <dd>{rounded(rpmAtTipSpeed(from, { diameterMm: toMm, volume: 1 }), format.number)} rpm</dd>
          {toUg !== undefined && (
            <>
              <dt>Same power for each litre</dt>
              <dd>{rounded(rpmAtPowerPerVolume(from, { diameterMm: toMm, volume: toUg }), format.number)} rpm</dd>
            </>
          )}
        </dl>
      )}
      <p>
        Two guides, not rules. Constant tip speed (π·d·n) keeps the shear at the tool’s edge: for rotor-stators and
        dispersing. Constant power per volume (P/V ∝ N³·D⁵/V) keeps the mixing of the whole: for propellers and anchors.
        They seldom agree; begin at the lower one and look.
      </p>
      <p class="sheet-source">
        Source: first principles; the turbulent power number, P = Np·ρ·N³·D⁵, for tools of one shape and liquids of one
        density. Thick batches are not turbulent: there it does not hold.
      </p>
    </Sheet>
  )
}

const worthOf = (typed: Typed): number | undefined => (typed.kind === 'number' ? typed.value : undefined)

const errorIn = (typed: Typed): string | undefined => (typed.kind === 'bad' ? sentenceOf(typed.refusal) : undefined)

const middleOf = (range: { readonly min: number; readonly max: number } | undefined): number | undefined =>
  range === undefined ? undefined : (range.min + range.max) / 2

const stirringOf = (rpm: number | undefined, diameterMm: number | undefined, volume: number): Stirring | null =>
  rpm === undefined || diameterMm === undefined || !(rpm > 0) || !(diameterMm > 0) ? null : { rpm, diameterMm, volume }

/** Two figures are all that a guide is worth. */
const rounded = (rpm: number, number: (value: number) => string): string => number(Number(rpm.toPrecision(2)))
