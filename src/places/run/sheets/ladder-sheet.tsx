import { Sheet } from '../../../parts/sheet'
import { Ladder } from '../ladder'
import type { SheetPartProps } from './sheet-part'

/** The ladder, where a phone has no room for it beside the number. */
export function LadderSheet({ onClose }: SheetPartProps) {
  return (
    <Sheet title="Steps" onClose={onClose}>
      <Ladder />
    </Sheet>
  )
}
