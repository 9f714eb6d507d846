import './chips.css'

interface PillButtonProps {
  text: string
  selected: boolean
  onPress: () => void
}

/** One of a few to choose from, of full height. */
export const PillButton = ({ text, selected, onPress }: PillButtonProps) => (
  <button type="button" class="pill pill-button pill-plain" aria-pressed={selected} onClick={onPress}>
    {text}
  </button>
)
