import { useFormat } from '../../app/format'
import { jarAddress } from '../../app/jar-address'
import { Mark, type MarkKind } from '../../parts/mark'

interface JarLinkProps {
  batch: string
  pull: { readonly id: string; readonly dueAtMs: number }
  name: string
  /** Where it stands: its mark, and the word for it. */
  standing: { readonly kind: MarkKind; readonly word: string }
}

/** A kept jar with its day and where it stands; it leads to its entry. */
export function JarLink({ batch, pull, name, standing: { kind, word } }: JarLinkProps) {
  const format = useFormat()
  return (
    <a class="jar" href={jarAddress(batch, pull.id)}>
      <Mark kind={kind} size={24} />
      <span class="jar-words">
        <strong>{name}</strong>
        <span class={`jar-sub jar-${kind}`}>
          {format.date(pull.dueAtMs)}, {word}
        </span>
      </span>
    </a>
  )
}
