import { useApp } from '../../app/app'
import { RecordPage } from './record-page'
import { RecordsList } from './records-list'

/** Finished batches and those in hand, and the record of each. */
export function RecordsPlace() {
  const { route } = useApp()
  const at = route.value
  const batch = at.place === 'records' ? at.batch : undefined
  return batch === undefined ? <RecordsList /> : <RecordPage key={batch} batch={batch} />
}
