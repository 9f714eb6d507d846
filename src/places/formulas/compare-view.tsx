import './revision.css'
import './compare.css'
import { useMemo } from 'preact/hooks'
import { useApp } from '../../app/app'
import type { Formula } from '../../batch/formula'
import { Button } from '../../parts/button'
import { Card } from '../../parts/card'
import { classes } from '../../parts/classes'
import { SelectField } from '../../parts/form'
import { type ComparedPart, compareRevisions } from './compare'
import { ComparedLines } from './compare-lines'
import { Fields, HowMark } from './compare-marks'
import type { Compared, FormulaPageModel } from './model'

/** Two revisions of one formula, line by line and step by step. */
export function CompareView({
  page,
  formula,
  compared,
}: {
  page: FormulaPageModel
  formula: Formula
  compared: Compared
}) {
  const app = useApp()
  const materials = app.catalogue.materials.value
  const mark = app.settings.decimalMark.value
  const was = formula.revisions.find(({ number }) => number === compared.was)
  const is = formula.revisions.find(({ number }) => number === compared.is)
  const comparison = useMemo(
    () => was && is && compareRevisions(formula, was, is, (id) => materials.get(id)?.name ?? id, mark),
    [formula, was, is, materials, mark],
  )
  const options = formula.revisions.map(({ number }) => ({ value: String(number), label: `r${number}` })).toReversed()
  return (
    <main class="formulas formulas-none">
      <div class="formulas-main">
        <header class="formula-head">
          <Button kind="plain" icon="arrow-left" label="Formula" onPress={() => page.compare(null)} />
          <div class="formula-title">
            <h1>
              {formula.name}, r{compared.was} and r{compared.is}
            </h1>
          </div>
        </header>
        <div class="compare-choice">
          <SelectField
            label="Earlier"
            value={String(compared.was)}
            options={options}
            onChange={(value) => page.compare({ ...compared, was: Number(value) })}
          />
          <SelectField
            label="Later"
            value={String(compared.is)}
            options={options}
            onChange={(value) => page.compare({ ...compared, is: Number(value) })}
          />
        </div>
        {comparison && (
          <>
            {comparison.head.length > 0 && (
              <Card label="The formula as a whole" class="formula-card-flat">
                <h2>The formula as a whole</h2>
                <Fields fields={comparison.head} />
              </Card>
            )}
            <ComparedLines lines={comparison.lines} was={compared.was} is={compared.is} />
            <Parts title="Procedure" parts={comparison.steps} numbered />
            <Parts title="Vessels" parts={comparison.vessels} />
            <Parts title="Specification" parts={comparison.checks} />
            <Parts title="Limits over several lines" parts={comparison.limits} />
          </>
        )}
      </div>
    </main>
  )
}

function Parts({ title, parts, numbered }: { title: string; parts: readonly ComparedPart[]; numbered?: boolean }) {
  if (parts.length === 0) return null
  return (
    <Card label={title} class="formula-card-flat">
      <h2>{title}</h2>
      <ol class="steps">
        {parts.map((part, at) => (
          <li key={part.id} class={classes('step', `compare-${part.how}`)}>
            <span class="step-number">{numbered ? at + 1 : ''}</span>
            <div class="step-words">
              <p class="step-title">
                {part.label} <HowMark how={part.how} />
              </p>
              <Fields fields={part.fields} />
            </div>
          </li>
        ))}
      </ol>
    </Card>
  )
}
