import './grip.css'
import { beginDrag, type DropPlace } from './drag-rows.ts'
import { Icon } from './icon.tsx'

interface GripProps {
  /** What is moved: "Squalane". */
  name: string
  id: string
  onStep: (by: -1 | 1) => void
  onDrop: (to: DropPlace) => void
}

/** The handle of a row: dragged with a glove, or moved with the arrow keys while it has the focus. */
export const Grip = ({ name, id, onStep, onDrop }: GripProps) => (
  <button
    type="button"
    class="grip"
    id={id}
    aria-label={`Move ${name}: drag, or arrow keys`}
    aria-keyshortcuts="ArrowUp ArrowDown"
    onPointerDown={(event) => {
      const row = event.currentTarget.closest('li')
      if (row !== null) beginDrag(event, { row, onDrop })
    }}
    onKeyDown={(event) => {
      const by = event.key === 'ArrowUp' ? -1 : event.key === 'ArrowDown' ? 1 : null
      if (by === null) return
      event.preventDefault()
      onStep(by)
      // A row that is moved in the page loses the focus, and may come back as another element.
      requestAnimationFrame(() => document.getElementById(id)?.focus())
    }}
  >
    <Icon name="grip" />
  </button>
)
