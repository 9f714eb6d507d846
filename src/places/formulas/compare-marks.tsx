import type { ChangedField, ComparedPart } from './compare'

/** How a part stands to the earlier revision, as a word; nothing where it is the same. */
export const HowMark = ({ how }: { how: ComparedPart['how'] }) =>
  how === 'same' ? null : <span class={`compare-mark compare-mark-${how}`}>{howWords[how]}</span>

/** What changed of it, each field with both its texts. */
export const Fields = ({ fields }: { fields: readonly ChangedField[] }) => (
  <>
    {fields.map(({ label, was, is }) => (
      <p key={label} class="step-how">
        {label}: {was || 'not stated'} → <strong>{is || 'not stated'}</strong>
      </p>
    ))}
  </>
)

const howWords: Readonly<Record<ComparedPart['how'], string>> = {
  same: '',
  changed: 'changed',
  moved: 'moved',
  added: '+ new',
  gone: '− gone',
}
