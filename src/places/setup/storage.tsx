import { useMemo } from 'preact/hooks'
import { useApp } from '../../app/app'
import { useFormat } from '../../app/format'
import { healText } from '../../app/heal-words'
import { BringIn } from '../../app/import/archive-import'
import { createSaver, everythingName } from '../../app/import/save-file'
import { formSentenceOf } from '../../app/refusals/forms'
import { Button } from '../../parts/button'
import { Card } from '../../parts/card'
import { Row } from '../../parts/choice'
import { Notice } from '../../parts/notice'
import { Pill } from '../../parts/pill'
import { Erase } from './erase'
import { backupTone, roomText, storageLines } from './storage-words'

/** Where the data lives, how it is, how it leaves and comes back. */
export function Storage() {
  const app = useApp()
  const state = app.storage.value
  return (
    <>
      <Backup />
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
      <Erase />
    </>
  )
}

function Backup() {
  const app = useApp()
  const format = useFormat()
  const saver = useMemo(() => createSaver(app), [app])
  const last = app.settings.value.value.lastBackupAt
  const nowMs = app.nowMs.value
  const state = saver.state.value
  return (
    <Card labelledBy="setup-backup" class="setup-card">
      <h2 id="setup-backup">Backup</h2>
      <p class={backupTone(last, nowMs) === 'good' ? 'setup-says' : 'setup-says setup-caution'}>
        {last === undefined
          ? 'No backup file has been saved from here yet.'
          : `Last backup ${format.ago(nowMs - Date.parse(last))}, ${format.date(last)}.`}
      </p>
      <div class="setup-buttons">
        <Button
          kind="filled"
          icon="download"
          label="Save a backup file"
          onPress={() => void saver.save('all', everythingName(app.clock.nowMs()))}
        />
        <BringIn />
      </div>
      {state.step === 'writing' && <Notice title="Writing the file." live />}
      {state.step === 'saved' && (
        <Notice kind="good" title="The file is on its way out. Keep it on another device." live />
      )}
      {state.step === 'ready' && (
        <Notice title="The file is ready." live>
          <Button kind="filled" label="Hand it on" onPress={() => void saver.handOn()} />
        </Notice>
      )}
      {state.step === 'failed' && <Notice kind="over" title={formSentenceOf(state.refusal)} live />}
      <p class="setup-hint">
        The file holds every batch, formula, material, lot and setting with its whole trail. Bringing it in again, here
        or on another tablet, adds what is missing and replaces nothing.
      </p>
    </Card>
  )
}

const looks = {
  good: { tone: 'within', icon: 'check', text: 'good' },
  caution: { tone: 'caution', icon: 'triangle-alert', text: 'mind' },
  over: { tone: 'over', icon: 'triangle-alert', text: 'trouble' },
} as const
