import './shelf.css'
import { Cup } from './cup.tsx'
import type { CupContents } from './cup-geometry.ts'

export interface ShelfVessel extends CupContents {
  id: string
  name: string
  /** The line beneath the name: "21.87 of 22.00 g", "empty". */
  massText: string
}

interface ShelfProps {
  vessels: readonly ShelfVessel[]
  /** The vessel in hand, drawn large. */
  inHand: string | undefined
  onSwitch: (id: string) => void
  /** The height of the large cup in px; with more than three vessels it is drawn smaller. */
  heightPx?: number | undefined
}

const mostInARow = 4

/** The vessels of the batch standing on a shelf; pressing one switches to it. */
export const Shelf = ({ vessels, inHand, onSwitch, heightPx = 196 }: ShelfProps) => {
  const largePx = vessels.length > 3 ? heightPx * 0.62 : heightPx
  return (
    <ul
      class="shelf"
      aria-label="Vessels"
      style={{ gridTemplateColumns: `repeat(${Math.min(vessels.length, mostInARow)}, auto)` }}
    >
      {vessels.map((vessel) => {
        const large = vessel.id === inHand
        const filled = vessel.strata.length > 0 || (vessel.liveUg ?? 0) > 0
        const height = large ? largePx : Math.max(largePx * (filled ? 0.48 : 0.39), 64)
        return (
          <li key={vessel.id} class="shelf-place">
            <button type="button" class="shelf-vessel" aria-pressed={large} onClick={() => onSwitch(vessel.id)}>
              <Cup {...vessel} label={undefined} width={height * (large ? 0.87 : 0.83)} height={height} />
              <span class="shelf-words">
                <span class="shelf-name">{vessel.name}</span>
                <span class={filled ? undefined : 'shelf-empty'}>{vessel.massText}</span>
              </span>
            </button>
          </li>
        )
      })}
    </ul>
  )
}
