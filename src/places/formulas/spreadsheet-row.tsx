import { useState } from 'preact/hooks'
import { useApp } from '../../app/app'
import { showNumber } from '../../app/forms/show-fields'
import type { LineAmount } from '../../app/import/table/line-amounts'
import type { Mapping } from '../../app/import/table/mapping'
import type { RowKind } from '../../app/import/table/settled'
import type { ReadLine, ReadRow } from '../../app/import/table/understood'
import { rowSentence } from '../../app/refusals/forms-spreadsheet'
import { classes } from '../../parts/classes'
import { Icon, type IconName } from '../../parts/icon'
import { Notice } from '../../parts/notice'
import { SpreadsheetMatch } from './spreadsheet-match'
import type { SpreadsheetModel } from './spreadsheet-model'
import { RowForm } from './spreadsheet-row-form'

interface RowProps {
  model: SpreadsheetModel
  row: ReadRow
  mapping: Mapping
  /** The letter of the phase that it stands in. */
  phase: string
  /** Something of it is to be settled. */
  isAsked: boolean
  isOpen: boolean
  onToggle: () => void
}

export function SpreadsheetRow({ model, row, mapping, phase, isAsked, isOpen, onToggle }: RowProps) {
  const { line, problems } = row
  // A field stays while somebody types in it, though its first digit may settle the row already.
  const [held, setHeld] = useState<readonly (number | null)[]>([])
  const columns = [...held, ...problems.map(({ column }) => column)]
  const wrong = columns.length > 0
  return (
    <li class={classes('sheet-row', `sheet-row-${row.kind}`, isAsked && 'sheet-row-asked')} id={`sheet-row-${row.row}`}>
      <button type="button" class="sheet-row-head" aria-expanded={isOpen || wrong} onClick={onToggle}>
        <span class="sheet-row-number">
          <span class="visually-hidden">Row </span>
          {row.row + 1}
        </span>
        <Icon name={isAsked ? 'triangle-alert' : kindLook[row.kind].icon} />
        <span class="sheet-row-words">
          <span class="sheet-row-name">{nameOf(row)}</span>
          <span class="sheet-row-sub">
            {line ? <LineFacts model={model} line={line} phase={phase} /> : kindLook[row.kind].word}
          </span>
        </span>
        {line && (
          <span class="sheet-row-amount">
            <AmountText amount={line.amount} />
          </span>
        )}
      </button>
      {problems.map((problem) => (
        <Notice key={problem.code} kind="caution" title={rowSentence(problem)} />
      ))}
      {line && <SpreadsheetMatch model={model} line={line} isOpen={isOpen} />}
      {(isOpen || wrong) && (
        <RowForm
          model={model}
          row={row}
          mapping={mapping}
          columns={isOpen ? [null] : columns}
          onEnter={() => setHeld(columns)}
          onLeave={() => setHeld([])}
        />
      )}
    </li>
  )
}

const kindLook: Readonly<Record<RowKind, { readonly icon: IconName; readonly word: string }>> = {
  title: { icon: 'info', word: 'the title' },
  heading: { icon: 'list', word: 'headings of the columns' },
  phase: { icon: 'flag', word: 'begins a phase' },
  line: { icon: 'check', word: '' },
  total: { icon: 'scale', word: 'a total: checked and left out' },
  note: { icon: 'file-text', word: 'goes into the note of the revision' },
  'left-out': { icon: 'minus', word: 'left out' },
}

const nameOf = ({ line, cells }: ReadRow): string => {
  const text = line ? line.name : cells.filter((cell) => cell !== '').join(' · ')
  if (text === '') return 'Without a name'
  return text.length > 160 ? `${text.slice(0, 159)}…` : text
}

/** The phase, the INCI name and what it does, and what it is of the house. */
function LineFacts({ model, line, phase }: { model: SpreadsheetModel; line: ReadLine; phase: string }) {
  const { materials } = useApp().catalogue
  const { match, said } = model.matchOf(line)
  const id = said ?? (match.kind === 'here' ? match.material.id : undefined)
  const known = id === undefined ? undefined : materials.value.get(id)
  const isNew = said === 'new' || (said === undefined && match.kind === 'new')
  const what = known ? (known.name === line.name ? 'in Materials' : `is ${known.name}`) : isNew ? 'new material' : ''
  const inci = line.inci.toLowerCase() === line.name.toLowerCase() ? '' : line.inci
  return <>{[`phase ${phase}`, inci, line.function, what].filter((each) => each !== '').join(' · ')}</>
}

function AmountText({ amount }: { amount: LineAmount | null }) {
  const mark = useApp().settings.decimalMark.value
  const percent = (fraction: number) => `${showNumber(fraction * 100, mark)} %`
  if (amount === null) return <>to settle</>
  switch (amount.kind) {
    case 'fraction':
      return <>{percent(amount.fraction)}</>
    case 'qs':
      return <>q.s.</>
    case 'as-needed':
      return <>{`${percent(amount.expected)} as needed`}</>
  }
}
