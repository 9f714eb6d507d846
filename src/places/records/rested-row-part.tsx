import type { Format } from '../../app/format'
import { basisWords } from '../../batch/entry-phrases'
import { foamMinutes, scaleOf } from '../../batch/how-read'
import { Choice } from '../../parts/choice'
import { Notice } from '../../parts/notice'
import { limitsWords } from './limits-words'
import { NumberOf, Readings, type RowForm, TextOf, ViscosityFields } from './reading-fields'
import type { RestedForm } from './rested-form'
import { type RestedRow, unitOfRow } from './rested-row'
import { RestedSoFar } from './rested-so-far'

interface RowProps {
  row: RestedRow
  form: RestedForm
  format: Format
  wrong: (field: string) => string | undefined
}

/** One check: what is asked for, its fields, and how it stands to its limits as far as it is entered. */
export function RestedRowPart({ row, form, format, wrong }: RowProps) {
  const { check } = row
  const hint = check && [check.method, basisWords(check.basis, { percent: (part) => format.percent(part, 0) })]
  const fields: RowForm = {
    row,
    text: form.textsOf(row.key),
    set: (field, text) => form.set(row.key, field, text),
    wrong,
  }
  return (
    <section class="rested-row" aria-label={check?.label ?? 'Something else'}>
      <header class="rested-head">
        <h3>{check?.label ?? 'Something else'}</h3>
        <p class="rested-limits">{limitsWords(check, format)}</p>
        {hint && <p class="rested-hint">{hint.filter(Boolean).join(', ')}</p>}
      </header>
      <div class="rested-fields">
        <Fields form={fields} />
      </div>
      <RestedSoFar row={row} result={form.soFar(row)} format={format} />
    </section>
  )
}

function Fields({ form }: { form: RowForm }) {
  switch (form.row.kind) {
    case 'number':
      return (
        <>
          <Readings form={form} />
          <NumberOf form={form} field="sampleC" label="Sample at" unit="°C" />
        </>
      )
    case 'viscosity':
      return <ViscosityFields form={form} />
    case 'density':
      return <DensityFields form={form} />
    case 'foam':
      return (
        <>
          <Readings form={form} label="At once" />
          <NumberOf form={form} field="later" label={`After ${foamMinutes} min`} unit={unitOfRow(form.row)} />
        </>
      )
    case 'feel': {
      const { least, most, low, high } = scaleOf(form.row.check)
      return (
        <>
          <p class="rested-hint rested-wide">
            {least}: {low}. {most}: {high}.
          </p>
          <Readings form={form} label="Step" />
        </>
      )
    }
    case 'seen':
      return <SeenFields form={form} />
    case 'spin':
      return <SpinFields form={form} />
    case 'free':
      return (
        <>
          <TextOf form={form} field="label" label="What was checked" />
          <Readings form={form} />
          <TextOf form={form} field="words" label="In words" />
        </>
      )
  }
}

function DensityFields({ form }: { form: RowForm }) {
  const weighed = form.text('way') === 'weighed'
  return (
    <>
      <div class="rested-wide">
        <Choice
          label="How it was found"
          value={weighed ? 'weighed' : 'figure'}
          options={[
            { value: 'figure', label: 'Read off' },
            { value: 'weighed', label: 'Mass and volume' },
          ]}
          onChange={(way) => form.set('way', way)}
        />
      </div>
      {weighed ? (
        <>
          <NumberOf form={form} field="mass" label="Mass" unit="g" />
          <NumberOf form={form} field="volume" label="Volume" unit="mL" />
        </>
      ) : (
        <Readings form={form} />
      )}
      <NumberOf form={form} field="sampleC" label="Sample at" unit="°C" />
    </>
  )
}

function SeenFields({ form }: { form: RowForm }) {
  const difference = form.text('difference')
  const wrong = form.wrong('difference')
  return (
    <div class="rested-wide rested-seen">
      <Choice
        label="Beside the standard"
        value={difference === '' ? undefined : difference}
        options={[
          { value: 'none', label: 'As the standard' },
          { value: 'slight', label: 'Slightly different' },
          { value: 'clear', label: 'Clearly different' },
        ]}
        onChange={(value) => form.set('difference', value)}
      />
      {wrong && <Notice kind="over" title={wrong} live />}
      <TextOf form={form} field="words" label="What you found" placeholder={form.row.check?.expected} />
    </div>
  )
}

function SpinFields({ form }: { form: RowForm }) {
  const { text, set } = form
  const wrong = form.wrong('separated')
  return (
    <>
      <NumberOf form={form} field="spin" label="Spun at" unit={text('spinBy') === 'g' ? '× g' : 'rpm'} />
      <NumberOf form={form} field="minutes" label="For" unit="min" />
      <div class="rested-wide rested-seen">
        <Choice
          label="Counted in"
          value={text('spinBy') === 'g' ? 'g' : 'rpm'}
          options={[
            { value: 'rpm', label: 'rpm' },
            { value: 'g', label: '× g' },
          ]}
          onChange={(by) => set('spinBy', by)}
        />
        <Choice
          label="What it did"
          value={text('separated') === '' ? undefined : text('separated')}
          options={[
            { value: 'no', label: 'Did not separate' },
            { value: 'yes', label: 'Separated' },
          ]}
          onChange={(value) => set('separated', value)}
        />
        {wrong && <Notice kind="over" title={wrong} live />}
      </div>
    </>
  )
}
