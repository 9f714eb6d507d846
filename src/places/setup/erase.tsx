import { useState } from 'preact/hooks'
import { useApp } from '../../app/app'
import { Button } from '../../parts/button'
import { Card } from '../../parts/card'
import { Notice } from '../../parts/notice'
import { PressAndHold } from '../../parts/press-and-hold'

/** The only thing here that cannot be undone: says what goes, then waits for a long press. */
export function Erase() {
  const app = useApp()
  const [asked, setAsked] = useState(false)
  const { formulas, materials, lots } = app.catalogue
  const inHand = app.batches.inHand.value.length
  return (
    <Card labelledBy="setup-erase" class="setup-card">
      <h2 id="setup-erase">Delete all data</h2>
      {app.upkeep.eraseFailed && (
        <Notice kind="over" title="Nothing was deleted: another page of the app is open. Close it, then try again." />
      )}
      {!asked && (
        <div class="setup-buttons">
          <Button icon="trash" label="Show what would go" onPress={() => setAsked(true)} />
        </div>
      )}
      {asked && (
        <>
          <p class="setup-says">
            Both copies go from this tablet: {inHand} in hand and every finished batch with its record,{' '}
            {formulas.value.size} formulas, {materials.value.size} materials, {lots.value.size} lots, people, balances,
            vessels and preferences. A backup file that was saved before stays where it is, and can be brought in again.
          </p>
          <div class="setup-buttons">
            <PressAndHold
              label="Delete it all"
              icon="trash"
              seconds={3}
              onDone={() => void app.upkeep.eraseEverything()}
            />
            <Button label="Leave it" onPress={() => setAsked(false)} />
          </div>
        </>
      )}
    </Card>
  )
}
