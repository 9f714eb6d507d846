import './formulas.css'
import { useEffect, useMemo } from 'preact/hooks'
import { useApp } from '../../app/app'
import { latePart } from '../../app/late-part'
import { addressOf } from '../../app/routes'
import { sideBySide } from '../../app/side-by-side'
import type { Formula, Revision } from '../../batch/formula'
import { labelOf, portionsOf } from '../../batch/label-draft'
import { Button } from '../../parts/button'
import { Row } from '../../parts/choice'
import { EmptyState } from '../../parts/empty'
import { SelectField } from '../../parts/form'
import { ChecksPanel } from './checks-panel'
import { CompareView } from './compare-view'
import { FormulaEditor } from './formula-editor'
import { FormulaFiles } from './formula-files'
import { type Compared, createFormulaPage, type FormulaPageModel } from './model'
import { RevisionChecks } from './revision-checks'
import { RevisionLimits } from './revision-limits'
import { RevisionLines } from './revision-lines'
import { RevisionSteps } from './revision-steps'

const LabelSheet = latePart(() => import('../../app/label/label-sheet'), 'LabelSheet')
const ScaleSheet = latePart(() => import('./scale-sheet'), 'ScaleSheet')

export function FormulaPage({ id }: { id: string }) {
  const app = useApp()
  const page = useMemo(() => createFormulaPage(app, id), [app, id])
  useEffect(() => void page.load(), [page])
  const formula = page.formula.value
  const revision = page.revision.value
  const draft = page.draft.value
  if (!page.read.value || !app.catalogue.loaded.value) return <main class="formulas" aria-busy="true" />
  if (draft) return <FormulaEditor draft={draft} isUsed={page.used.value.has(draft.from ?? 0)} onLeave={page.leave} />
  const compared = page.compared.value
  if (formula && compared) return <CompareView page={page} formula={formula} compared={compared} />
  if (formula && revision) return <Reading page={page} formula={formula} revision={revision} />
  return (
    <main class="formulas formulas-none">
      <EmptyState
        title="That formula is not here"
        text="It may stand on another tablet, or in a file that was not brought in yet."
        actions={<Button icon="arrow-left" label="To the formulas" href={addressOf({ place: 'formulas' })} />}
      />
    </main>
  )
}

interface ReadingProps {
  page: FormulaPageModel
  formula: Formula
  revision: Revision
}

const Reading = ({ page, formula, revision }: ReadingProps) => (
  <main class="formulas formula-reading">
    <div class="formulas-main formula-top">
      <header class="formula-head">
        <Button kind="plain" icon="arrow-left" label="Formulas" href={addressOf({ place: 'formulas' })} />
        <div class="formula-title">
          <h1>{formula.name}</h1>
          <p class="formula-facts">
            <strong>
              {formula.code} r{revision.number}
            </strong>{' '}
            · {formula.contact} · {approval(revision)}
          </p>
        </div>
      </header>
      {revision.note && <p class="formula-note">{revision.note}</p>}
    </div>
    <Actions page={page} formula={formula} revision={revision} />
    <PageSheet page={page} formula={formula} revision={revision} />
    <div class="formulas-main">
      <RevisionLines revision={revision} />
      <ChecksPanel revision={revision} contact={formula.contact} />
      <RevisionSteps revision={revision} />
      <RevisionLimits revision={revision} />
      <RevisionChecks revision={revision} />
    </div>
  </main>
)

const PageSheet = ({ page, formula, revision }: ReadingProps) => {
  const { materials } = useApp().catalogue
  const close = () => page.show(null)
  switch (page.sheet.value) {
    case null:
      return null
    case 'scale':
      return <ScaleSheet formula={formula} revision={revision} onClose={close} />
    case 'label':
      return (
        <LabelSheet
          draft={labelOf(portionsOf(revision, materials.value), formula.contact)}
          of={`${formula.name}, ${formula.code} r${revision.number}, ${formula.contact}`}
          how="as the formula states it"
          onClose={close}
        />
      )
  }
}

const Actions = ({ page, formula, revision }: ReadingProps) => (
  <aside class="formulas-side formula-actions" aria-label="What to do with it">
    <Button
      kind="filled"
      size="primary"
      icon="play"
      label="Start a batch"
      href={addressOf({ place: 'start', formula: formula.id })}
      full
    />
    <Button icon="scale" label="Scale" sub="another size, or from stock" onPress={() => page.show('scale')} full />
    <Button icon="file-text" label="Label draft" sub="ingredients in order" onPress={() => page.show('label')} full />
    <Button
      icon="pencil"
      label="Change"
      sub={changeWords(page, formula, revision)}
      onPress={() => void page.change()}
      full
    />
    <Button icon="copy" label="Duplicate" sub="a formula of its own" onPress={() => void page.duplicate()} full />
    <Button
      icon="package"
      label={formula.archived ? 'Take out again' : 'Put away'}
      sub={formula.archived ? 'back in the list' : 'out of the list, kept'}
      onPress={() => void page.archive(formula.archived !== true)}
      full
    />
    <FormulaFiles formula={formula} revision={revision} />
    {formula.revisions.length > 1 && (
      <SelectField
        label="Revision"
        value={String(revision.number)}
        options={formula.revisions
          .map(({ number, note }) => ({ value: String(number), label: note ? `r${number}: ${note}` : `r${number}` }))
          .toReversed()}
        onChange={(value) => page.choose(Number(value))}
      />
    )}
    {formula.revisions.length > 1 && (
      <Button
        icon="compare"
        label="Compare two revisions"
        onPress={() => page.compare(lastTwo(formula, revision))}
        full
      />
    )}
    <FromBatches page={page} formula={formula} />
  </aside>
)

/** The next revision can begin as one of its batches was made. */
function FromBatches({ page, formula }: { page: FormulaPageModel; formula: Formula }) {
  const batches = page.batches.value
  if (batches.length === 0) return null
  return (
    <>
      {batches.length > 1 && <Button icon="compare" label="Compare its batches" href={sideBySide(formula.id)} full />}
      <details class="formula-batches">
        <summary>New revision from a batch as it was made</summary>
        {batches.map(({ id, code, revision }) => (
          <Row
            key={id}
            label={code}
            sub={`r${revision}`}
            href={addressOf({ place: 'formulas', formula: formula.id, batch: id })}
          />
        ))}
      </details>
    </>
  )
}

/** The one that is read, beside the one before it. */
function lastTwo({ revisions }: Formula, { number }: Revision): Compared {
  const before = revisions.filter((each) => each.number < number).at(-1)
  return before === undefined
    ? { was: number, is: revisions.at(-1)?.number ?? number }
    : { was: before.number, is: number }
}

/** A used revision is left as it is; a change of it is the next one. */
function changeWords(page: FormulaPageModel, formula: Formula, { number }: Revision): string {
  const last = Math.max(...formula.revisions.map((each) => each.number))
  if (page.used.value.has(number)) return `batches used r${number}: this makes r${last + 1}`
  return number === last ? `r${number}, no batch has used it` : `this makes r${last + 1}`
}

const approval = ({ approvedBy, approvedAt }: Revision): string =>
  approvedBy ? `approved by ${approvedBy}${approvedAt ? ` ${approvedAt.slice(0, 10)}` : ''}` : 'not approved'
