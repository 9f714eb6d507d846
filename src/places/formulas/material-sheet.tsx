import { useApp } from '../../app/app'
import type { FieldOption } from '../../app/forms/field-spec'
import { PickSheet } from '../../app/forms/pick-sheet'
import { Button } from '../../parts/button'

interface MaterialSheetProps {
  options: readonly FieldOption[]
  onPick: (material: string) => void
  onClose: () => void
}

/** Which material a new line is of. One that is not here yet is put down by its name; the rest can be said later. */
export function MaterialSheet({ options, onPick, onClose }: MaterialSheetProps) {
  const app = useApp()
  const put = async (name: string) => {
    const id = app.ids.next()
    const refused = await app.catalogue.save('material', { id, name, inci: [], function: '' }, 'named in a formula')
    if (refused === null) onPick(id)
  }
  return (
    <PickSheet
      title="Which material?"
      options={options}
      value=""
      onPick={onPick}
      onClose={onClose}
      more={(typed) => (
        <Button
          icon="plus"
          label={typed === '' ? 'A new material' : `New: ${typed.slice(0, 60)}`}
          sub={typed === '' ? 'type its name first' : 'only its name; say the rest under Materials'}
          disabled={typed === ''}
          onPress={() => void put(typed.slice(0, 200))}
          full
        />
      )}
    />
  )
}
