import { useApp } from '../../app/app'
import { healText } from '../../app/heal-words'
import { Button } from '../../parts/button'
import { Card } from '../../parts/card'
import { Row } from '../../parts/choice'
import { Notice } from '../../parts/notice'
import { Pill } from '../../parts/pill'
import { BackupCard } from './backup-card'
import { DeviceKeyCard } from './device-key-card'
import { Erase } from './erase'
import { roomText, storageLines } from './storage-words'

/** Where the data lives, how it is, how it leaves and comes back. */
export function Storage() {
  const app = useApp()
  const state = app.storage.value
  return (
    <>
      <BackupCard />
      <Card labelledBy="setup-copies" class="setup-card">
        <h2 id="setup-copies">The two copies on this tablet</h2>
        <div>
          {storageLines(state).map(({ label, text, tone }) => (
            <Row key={label} label={label} sub={text}>
              <Pill {...looks[tone]} />
            </Row>
          ))}
          <Row label="Room" sub={roomText(state)} />
        </div>
        {!state.persisted && (
          <div class="setup-buttons">
            <Button icon="lock" label="Ask the browser to keep it" onPress={() => void app.upkeep.askToKeep()} />
            <p class="setup-hint">Some browsers grant it only once the app is on the home screen.</p>
          </div>
        )}
        <p class="setup-says">
          Both copies live in this browser's storage. Each mends the other after a crash, a power cut or a damaged file.
          Clearing site data, or losing the tablet, takes both. Only a backup file leaves the tablet.
        </p>
        {app.heals.value.map((heal) => (
          <Notice key={`${heal.code} ${heal.entries} ${heal.streams}`} title={healText(heal)} />
        ))}
      </Card>
      <DeviceKeyCard />
      <Erase />
    </>
  )
}

const looks = {
  good: { tone: 'within', icon: 'check', text: 'good' },
  caution: { tone: 'caution', icon: 'triangle-alert', text: 'mind' },
  over: { tone: 'over', icon: 'triangle-alert', text: 'trouble' },
} as const
