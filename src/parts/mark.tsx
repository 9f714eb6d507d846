import './mark.css'

export type MarkKind = 'to-go' | 'within' | 'over' | 'waiting' | 'done' | 'to-do' | 'now' | 'part' | 'closed'

const shape = (kind: MarkKind) => {
  switch (kind) {
    case 'within':
    case 'done':
      return (
        <>
          <circle cx="14" cy="14" r="13" fill="currentColor" />
          <path d="m8 14.5 4 4 8-8.5" class="mark-cut" />
        </>
      )
    case 'over':
      return (
        <>
          <path d="M14 2.5 26.5 25H1.5Z" fill="currentColor" stroke="currentColor" stroke-linejoin="round" />
          <path d="M14 10.5v6.5M14 21.2v.1" class="mark-cut" />
        </>
      )
    case 'waiting':
      return <path d="M14 8v6.5l4 2M25 14a11 11 0 1 1-22 0 11 11 0 0 1 22 0Z" class="mark-line" />
    case 'now':
      return (
        <path
          d="M5 4.5h11L24.5 14 16 23.5H5Z"
          fill="currentColor"
          stroke="currentColor"
          stroke-width="2"
          stroke-linejoin="round"
        />
      )
    case 'part':
      return (
        <>
          <circle cx="14" cy="14" r="10" class="mark-line" />
          <path d="M14 4a10 10 0 0 1 0 20Z" fill="currentColor" />
        </>
      )
    case 'closed':
      return <circle cx="14" cy="14" r="10.5" class="mark-line" stroke-dasharray="3.7 3.3" />
    case 'to-go':
      return <circle cx="14" cy="14" r="11.5" class="mark-line mark-heavy" />
    case 'to-do':
      return <circle cx="14" cy="14" r="10" class="mark-line" />
  }
}

/** Where a thing stands, by shape; its colour follows the kind, and a word always stands beside it. */
export const Mark = ({ kind, size = 28 }: { kind: MarkKind; size?: number | undefined }) => (
  <svg class={`mark mark-${kind}`} viewBox="0 0 28 28" width={size} height={size} aria-hidden="true">
    {shape(kind)}
  </svg>
)
