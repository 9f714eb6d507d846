import './checks-panel.css'
import { useMemo } from 'preact/hooks'
import { useApp } from '../../app/app'
import { type Format, useFormat } from '../../app/format'
import {
  boundsText,
  checkSentence,
  figureText,
  severityWords,
  sourceText,
  topicWords,
} from '../../app/refusals/formula-checks'
import type { Formula, Revision } from '../../batch/formula'
import { checksOf, type FormulaCheck, inOrder, type Severity } from '../../batch/formula-checks'
import { Card } from '../../parts/card'
import { Mark, type MarkKind } from '../../parts/mark'

interface ChecksPanelProps {
  revision: Revision
  contact: Formula['contact']
  /** The size that small masses and the cost are reckoned at; the usual one where none is given. */
  sizeUg?: number | undefined
}

/** What can be said about a formula before it is weighed: what to look at again in the open, the rest folded away. */
export function ChecksPanel({ revision, contact, sizeUg }: ChecksPanelProps) {
  const { catalogue } = useApp()
  const format = useFormat()
  const materials = catalogue.materials.value
  const balances = catalogue.balances.value
  const checks = useMemo(
    () =>
      checksOf(revision, { contact }, materials, {
        balances: [...balances.values()],
        ...(sizeUg === undefined ? {} : { sizeUg }),
      }),
    [revision, contact, materials, balances, sizeUg],
  )
  const of = (severity: Severity, code?: FormulaCheck['code']) =>
    checks.filter((check) => check.severity === severity && (check.code === 'HAZARD') === (code === 'HAZARD'))
  const grave = [...of('stop'), ...of('warn')]
  return (
    <Card label="Checks" class="formula-card-flat">
      <h2>Checks</h2>
      <ul class="formula-says">
        {grave.map((check) => (
          <CheckRow key={keyOf(check)} check={check} format={format} />
        ))}
      </ul>
      <p class="formula-says-order">
        <Mark kind="done" size={24} />
        <span>
          In order:{' '}
          {inOrder(checks)
            .map((topic) => topicWords[topic])
            .join(', ')}
          .
        </span>
      </p>
      <Folded title="Worth knowing" checks={of('note')} format={format} />
      <Folded title="Not known" checks={of('missing')} format={format} />
      <Folded title="Hazards" checks={of('note', 'HAZARD')} format={format} />
    </Card>
  )
}

const Folded = ({ title, checks, format }: { title: string; checks: readonly FormulaCheck[]; format: Format }) =>
  checks.length === 0 ? null : (
    <details class="formula-says-more">
      <summary>
        {title} <span class="formula-says-count">{checks.length}</span>
      </summary>
      <ul class="formula-says">
        {checks.map((check) => (
          <CheckRow key={keyOf(check)} check={check} format={format} />
        ))}
      </ul>
    </details>
  )

const CheckRow = ({ check, format }: { check: FormulaCheck; format: Format }) => {
  const figures = figuresOf(check, format)
  return (
    <li class={`formula-say formula-say-${check.severity}`}>
      <Mark kind={marks[check.severity]} size={24} />
      <div>
        <p class="formula-say-text">
          {(check.severity === 'stop' || check.severity === 'warn') && (
            <strong class="formula-say-word">{severityWords[check.severity]}: </strong>
          )}
          {checkSentence(check, format)}
        </p>
        <p class="formula-say-figures">{[...figures, sourceText(check.source)].join(' · ')}</p>
      </div>
    </li>
  )
}

function figuresOf({ figure, limit }: FormulaCheck, format: Format): readonly string[] {
  const limits = limit && boundsText(limit, format)
  if (figure) return [figureText(figure, format), ...(limits ? [`limit ${limits}`] : [])]
  return limits ? [`limit ${limits}`] : []
}

const marks: Readonly<Record<Severity, MarkKind>> = { stop: 'over', warn: 'over', missing: 'closed', note: 'to-do' }

const keyOf = ({ code, line, step, ...rest }: FormulaCheck): string =>
  [
    code,
    line,
    step,
    'what' in rest ? rest.what : '',
    'name' in rest ? rest.name : '',
    'inci' in rest ? rest.inci : '',
  ].join(' ')
