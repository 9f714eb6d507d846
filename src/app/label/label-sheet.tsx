import './label-sheet.css'
import { useState } from 'preact/hooks'
import { type LabelDraft, type LabelEntry, labelText } from '../../batch/label-draft'
import { Button } from '../../parts/button'
import { copyText } from '../../parts/copy-text'
import { Caution, Notice } from '../../parts/notice'
import { Sheet } from '../../parts/sheet'
import { type Format, useFormat } from '../format'

interface LabelSheetProps {
  draft: LabelDraft
  /** "Oat barrier body lotion, QW-LOT-01 r3, leave-on". */
  of: string
  /** "as the formula states it", "as it was made". */
  how: string
  onClose: () => void
}

/** The list of ingredients in label order, with the shares beside it; to be copied or printed, and to be checked. */
export const LabelSheet = ({ draft, of, how, onClose }: LabelSheetProps) => {
  const format = useFormat()
  const [copied, setCopied] = useState(false)
  const { above, upToOne, colourants } = draft
  const text = labelText(draft)
  return (
    <Sheet
      title="Label draft"
      onClose={onClose}
      foot={<Button icon="printer" label="Print" onPress={() => window.print()} />}
    >
      <div class="label-draft">
        <p>
          <strong>{of}</strong>, {how}
        </p>
        <Caution text="A draft for the responsible person, who decides. Label law is local, and names may differ." />
        <p class="label-text">{text === '' ? 'No material of it has an INCI name yet.' : text}</p>
        <Button
          kind="filled"
          icon={copied ? 'check' : 'copy'}
          label={copied ? 'Copied' : 'Copy the list'}
          disabled={text === ''}
          onPress={() => setCopied(copyText(text))}
          class="label-copy"
        />
        <Doubts draft={draft} format={format} />
        <Group title="Above 1 %, falling" entries={above} format={format} />
        <Group title="At or below 1 %, in any order" entries={upToOne} format={format} />
        <Group title="Colourants, last" entries={colourants} format={format} />
      </div>
    </Sheet>
  )
}

const Doubts = ({ draft, format }: { draft: LabelDraft; format: Format }) => (
  <>
    {draft.unnamedMaterials.length > 0 && (
      <Notice
        kind="caution"
        title={`The list is not whole: ${format.percent(draft.unnamed)} of the product has no INCI name (${draft.unnamedMaterials.join(', ')}).`}
      />
    )}
    {draft.allergensUnknown.map(({ material, names }) => (
      <Notice
        key={material}
        kind="caution"
        title={`${material} brings ${names.join(', ')}; how much is not written down. Name ${names.length === 1 ? 'it' : 'them'} unless its supplier's sheet says less.`}
      />
    ))}
  </>
)

const Group = ({ title, entries, format }: { title: string; entries: readonly LabelEntry[]; format: Format }) =>
  entries.length === 0 ? null : (
    <table class="label-group">
      <caption>{title}</caption>
      <tbody>
        {entries.map(({ name, fraction, allergen }) => (
          <tr key={name}>
            <th scope="row">
              {name}
              {allergen && <span class="label-quiet"> allergen</span>}
            </th>
            <td>{format.percent(fraction, fraction < 0.001 ? 4 : 2)}</td>
          </tr>
        ))}
      </tbody>
    </table>
  )
