import { useApp } from '../../app/app'
import { allBatches, jarParts } from '../../app/jar-address'
import { latePart } from '../../app/late-part'
import { RecordPage } from './record-page'
import { RecordsList } from './records-list'

const StabilityPage = latePart(() => import('./stability-page'), 'StabilityPage')
const JarEntry = latePart(() => import('./jar-entry'), 'JarEntry')
const JarLabels = latePart(() => import('./jar-labels'), 'JarLabels')
const PullsPage = latePart(() => import('./pulls-page'), 'PullsPage')

/** Finished batches and those in hand, the record of each, and its kept jars. */
export function RecordsPlace() {
  const { route } = useApp()
  const at = route.value
  const { batch, part } = at.place === 'records' ? at : {}
  if (batch === undefined) return <RecordsList />
  if (part === undefined) return batch === allBatches ? <PullsPage /> : <RecordPage key={batch} batch={batch} />
  if (part === jarParts.stability) return <StabilityPage key={batch} batch={batch} />
  if (part === jarParts.labels) return <JarLabels key={batch} batch={batch} />
  return <JarEntry key={`${batch} ${part}`} batch={batch} part={part} />
}
