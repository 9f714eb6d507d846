import './rested.css'
import { useEffect, useMemo, useState } from 'preact/hooks'
import { useApp } from '../../app/app'
import { useFormat } from '../../app/format'
import { type Refusal, sentenceOf } from '../../app/refusals'
import { recordSentences } from '../../app/refusals/forms-records'
import { numberSentences } from '../../app/refusals/numbers'
import { sayFrom } from '../../app/refusals/sentences'
import type { BatchRecord } from '../../batch/record'
import { Button } from '../../parts/button'
import { Notice } from '../../parts/notice'
import { Sheet } from '../../parts/sheet'
import type { RecordModel } from './record-model'
import { aboutAll, createRestedForm, type RestedForm } from './rested-form'
import type { RowProblem } from './rested-result'
import { RestedRowPart } from './rested-row-part'
import { WhenPart } from './when-part'

interface RestedSheetProps {
  record: BatchRecord
  model: RecordModel
  onClose: () => void
}

/** The checks of one batch after its rest, all in one pass: what is left empty stays due. */
export function RestedSheet({ record, model, onClose }: RestedSheetProps) {
  const app = useApp()
  const format = useFormat()
  const form = useMemo(() => createRestedForm(record, app), [app])
  useEffect(() => void form.restore(), [form])
  const [refusal, setRefusal] = useState<Refusal | null>(null)
  const rows = form.rows.value
  const entered = rows.filter((row) => form.soFar(row) !== null).length
  const save = async () => {
    const intention = form.read()
    if (intention === null) {
      showWrong()
      return
    }
    const refused = await model.write(intention)
    setRefusal(refused)
    if (refused !== null) return
    form.forget()
    onClose()
  }
  const about = form.textsOf(aboutAll)
  return (
    <Sheet
      wide
      title="Checks after the rest"
      onClose={onClose}
      foot={<Button kind="filled" size="primary" label={labelOf(entered)} onPress={() => void save()} full />}
    >
      <div class="rested">
        {rows.map((row) => (
          <RestedRowPart key={row.key} row={row} form={form} format={format} wrong={wrongOf(form, row.key)} />
        ))}
        <div class="rested-more">
          <Button icon="plus" label="Something else" onPress={form.addFree} />
        </div>
        <WhenPart
          draft={{ when: about('when'), moment: about('moment'), reason: about('reason') }}
          change={(part) => {
            for (const [field, text] of Object.entries(part)) form.set(aboutAll, field, text)
          }}
          wrong={{ moment: wrongOf(form, aboutAll)('moment'), reason: wrongOf(form, aboutAll)('reason') }}
        />
        {wrongOf(form, aboutAll)('all') && <Notice kind="over" title={wrongOf(form, aboutAll)('all') ?? ''} live />}
        {refusal && <Notice kind="over" title={sentenceOf(refusal)} live />}
      </div>
    </Sheet>
  )
}

const labelOf = (entered: number): string =>
  entered === 0 ? 'Record what is read' : entered === 1 ? 'Record 1 check' : `Record ${entered} checks`

/** The sentence at a field of a row, where that is what is wrong. */
const wrongOf =
  ({ problem }: RestedForm, row: string) =>
  (field: string): string | undefined => {
    const wrong = problem.value
    return wrong?.row === row && wrong.field === field ? sentenceOfProblem(wrong) : undefined
  }

const sentenceOfProblem = ({ refusal }: RowProblem): string =>
  sayFrom<RowProblem['refusal']>({ ...numberSentences, ...recordSentences }, refusal)

/** What is wrong may stand out of sight of the button. */
const showWrong = (): void =>
  void requestAnimationFrame(() =>
    document.querySelector('.rested .field-wrong, .rested .notice-over')?.scrollIntoView({ block: 'center' }),
  )
