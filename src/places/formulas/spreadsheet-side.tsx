import './editor.css'
import { useApp } from '../../app/app'
import { NumberEntry } from '../../app/forms/number-entry'
import { showNumber } from '../../app/forms/show-fields'
import type { ReadTable } from '../../app/import/table/understood'
import { tableSentence } from '../../app/refusals/forms-spreadsheet'
import { Button } from '../../parts/button'
import { SelectField } from '../../parts/form'
import { Notice } from '../../parts/notice'
import { PressAndHold } from '../../parts/press-and-hold'
import type { KeptImport } from './spreadsheet-kept'
import type { SpreadsheetModel } from './spreadsheet-model'

interface SideProps {
  model: SpreadsheetModel
  kept: KeptImport
  table: ReadTable
}

/** What the sheet does not say, what is still to be settled, and the one thing that saves. */
export function SpreadsheetSide({ model, kept, table }: SideProps) {
  const app = useApp()
  const count = model.toSettle.value
  const save = async () => {
    const formula = await model.save()
    if (formula !== null) app.go({ place: 'formulas', formula })
  }
  const [first] = model.open.value
  return (
    <aside class="formulas-side sheet-side" aria-label="What it becomes">
      <div class="editor-says" aria-live="polite">
        {table.problems.map((problem) => (
          <Notice key={problem.code} kind="caution" title={tableSentence(problem)} />
        ))}
      </div>
      <Whole model={model} kept={kept} table={table} />
      {first !== undefined && (
        <Button
          icon="arrow-right"
          label={
            model.open.value.length === 1 ? 'To the row to settle' : `To the first of ${model.open.value.length} rows`
          }
          onPress={() => goTo(first)}
          full
        />
      )}
      {model.refusal.value && <Notice kind="over" title={model.refusal.value} live />}
      <Button
        kind={count === 0 ? 'filled' : 'closed'}
        size="primary"
        icon="check"
        label="Save the formula"
        sub={
          count === 0
            ? whatComes(model, table)
            : count === 1
              ? '1 thing to settle first'
              : `${count} things to settle first`
        }
        disabled={model.busy.value}
        onPress={() => void save()}
        full
      />
      <p class="formulas-hint">
        Everything is weighed into one vessel, phase by phase. Heating, mixing and checks are added in the formula.
      </p>
      <PressAndHold label="Throw it away" icon="trash" onDone={() => void model.leave()} full />
    </aside>
  )
}

/** What the lines come to, and how a sheet that does not make a whole is made one. */
function Whole({ model, kept, table }: SideProps) {
  const mark = useApp().settings.decimalMark.value
  const lines = table.rows.flatMap(({ row, line }) => (line ? [{ row, line }] : []))
  const has = (code: string) => table.problems.some((problem) => problem.code === code)
  const { fill, total } = kept.settled
  return (
    <>
      {(has('TABLE_NOT_WHOLE') || fill !== null) && (
        <SelectField
          label="Makes up to 100 %"
          value={fill === null ? '' : String(fill)}
          options={[
            { value: '', label: 'no line' },
            ...lines.map(({ row, line }) => ({ value: String(row), label: `${row + 1} ${line.name}` })),
          ]}
          onChange={(value) => model.settle({ fill: value === '' ? null : Number(value) })}
        />
      )}
      {(has('TABLE_TOTAL_UNKNOWN') || total !== '') && (
        <NumberEntry
          label="All of it weighs"
          unit="g"
          value={total}
          onChange={(text) => model.settle({ total: text })}
        />
      )}
      {lines.length > 0 && <p class="formulas-hint">{sumWords(table, mark)}</p>}
    </>
  )
}

function sumWords({ rows, phases }: ReadTable, mark: '.' | ','): string {
  const amounts = rows.flatMap(({ line }) => line?.amount ?? [])
  const stated = amounts.reduce((sum, each) => {
    if (each.kind === 'qs') return sum
    return sum + (each.kind === 'fraction' ? each.fraction : each.expected)
  }, 0)
  const lines = rows.filter(({ line }) => line !== null).length
  const counted = `${lines} ${lines === 1 ? 'line' : 'lines'} in ${phases.length} ${phases.length === 1 ? 'phase' : 'phases'}`
  const rest = amounts.some(({ kind }) => kind === 'qs') ? `, and ${showNumber((1 - stated) * 100, mark)} % q.s.` : ''
  return `${counted}: ${showNumber(stated * 100, mark)} %${rest}`
}

function whatComes(model: SpreadsheetModel, table: ReadTable): string {
  const fresh = new Set(
    table.rows.flatMap(({ line }) => {
      if (line === null) return []
      const { match, said } = model.matchOf(line)
      return said === 'new' || (said === undefined && match.kind === 'new') ? [line.name.toLowerCase()] : []
    }),
  ).size
  if (fresh === 0) return 'all of its materials are here'
  return fresh === 1 ? 'with 1 new material' : `with ${fresh} new materials`
}

function goTo(row: number): void {
  const at = document.getElementById(`sheet-row-${row}`)
  at?.scrollIntoView({ block: 'center' })
  at?.querySelector('button')?.focus({ preventScroll: true })
}
