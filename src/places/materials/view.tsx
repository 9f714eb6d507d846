import { useApp } from '../../app/app'
import { MaterialPage } from './material-page'
import { MaterialsList } from './materials-list'

/** The materials of the house with their lots, and each of them to read or to change. */
export function MaterialsPlace() {
  const at = useApp().route.value
  const material = at.place === 'materials' ? at.material : undefined
  return material === undefined ? <MaterialsList /> : <MaterialPage key={material} address={material} />
}
