import { addressOf } from '../../app/routes'
import { Button } from '../../parts/button'
import { EmptyState } from '../../parts/empty'

/** The address of a run names a batch that this tablet does not have. */
export const NoSuchBatch = () => (
  <main class="run-opening">
    <EmptyState
      title="There is no such batch on this tablet"
      text="It may stand on another tablet, or its address was cut short. The batches in hand are on the bench."
      actions={<Button kind="filled" label="To the bench" href={addressOf({ place: 'bench' })} />}
    />
  </main>
)
