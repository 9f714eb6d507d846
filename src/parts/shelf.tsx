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
  /** The height of the large cup in px. */
  heightPx?: number | undefined
}

const heightOf = (vessel: ShelfVessel, large: boolean, heightPx: number): number => {
  if (large) return heightPx
  return vessel.strata.length > 0 || (vessel.liveUg ?? 0) > 0
    ? Math.max(heightPx * 0.48, 64)
    : Math.max(heightPx * 0.39, 60)
}

/** The vessels of the batch standing on a shelf; pressing one switches to it. */
export const Shelf = ({ vessels, inHand, onSwitch, heightPx = 196 }: ShelfProps) => (
  <ul class="shelf" aria-label="Vessels">
    {vessels.map((vessel) => {
      const large = vessel.id === inHand
      const height = heightOf(vessel, large, heightPx)
      return (
        <li key={vessel.id} class={large ? 'shelf-place shelf-in-hand' : 'shelf-place'}>
          <button type="button" class="shelf-vessel" aria-pressed={large} onClick={() => onSwitch(vessel.id)}>
            <Cup {...vessel} label={undefined} width={height * 0.87} height={height} />
            <span class="shelf-name">{vessel.name}</span>
            <span class="shelf-mass">{vessel.massText}</span>
          </button>
        </li>
      )
    })}
  </ul>
)
