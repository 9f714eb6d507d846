import { useEffect, useMemo } from 'preact/hooks'
import { useApp } from '../../app/app'
import { Button } from '../../parts/button'
import { Card } from '../../parts/card'
import { Notice } from '../../parts/notice'
import { type AlarmState, type AwakeState, createTabletModel, mayTakeOver } from './tablet-model'

/** What the app can do with this tablet, tried out before it matters. */
export function Tablet() {
  const app = useApp()
  const model = useMemo(() => createTabletModel(app), [app])
  useEffect(() => model.dispose, [model])
  return (
    <>
      <Card labelledBy="setup-alarm" class="setup-card">
        <h2 id="setup-alarm">Alarm</h2>
        <p class="setup-says">{alarmWords[model.alarm.value]}</p>
        <div class="setup-buttons">
          <Button icon="bell-ring" label="Ring it once" onPress={model.testAlarm} />
        </div>
        {model.tested.value && (
          <Notice title="Nothing heard? Turn the tablet's volume up and its silent switch off." live />
        )}
        <p class="setup-hint">
          No browser rings for a page that is closed or a tablet that sleeps. Keep the app open and the screen on.
        </p>
      </Card>
      <Card labelledBy="setup-awake" class="setup-card">
        <h2 id="setup-awake">Screen</h2>
        <p class="setup-says">{awakeWords[model.awake.value]}</p>
        <div class="setup-buttons">
          <Button icon="sun" label="Try it" onPress={model.tryAwake} />
        </div>
      </Card>
      <Card labelledBy="setup-install" class="setup-card">
        <h2 id="setup-install">On the home screen</h2>
        <p class="setup-says">
          From the browser's menu, choose to add it to the home screen or to install it. It then opens without the
          browser's bars, works without a network like before, and browsers are readier to keep its data.
        </p>
      </Card>
      <Version />
    </>
  )
}

function Version() {
  const app = useApp()
  const { waiting, buildId, takeOver } = app.update
  return (
    <Card labelledBy="setup-version" class="setup-card">
      <h2 id="setup-version">Version</h2>
      <p class="setup-says">{buildId}</p>
      {!waiting.value && <p class="setup-hint">This is the newest version that this tablet has seen.</p>}
      {waiting.value && mayTakeOver(app) && (
        <Notice title="A new version is here. Nothing typed is lost by taking it.">
          <Button kind="filled" icon="rotate-ccw" label="Take the new version" onPress={takeOver} />
        </Notice>
      )}
      {waiting.value && !mayTakeOver(app) && (
        <Notice title="A new version is here. It is offered once no timer runs." />
      )}
    </Card>
  )
}

const alarmWords: Record<AlarmState, string> = {
  ready: 'The bell can sound.',
  locked: 'Browsers stay silent until the first tap. Ring it once to be sure.',
  broken: 'This browser gives no sound. Timers show on the screen and in the title only.',
}

const awakeWords: Record<AwakeState | 'not-tried', string> = {
  'not-tried': 'During a batch the screen is kept on. Try whether this tablet allows it.',
  kept: 'The screen stays on.',
  lost: 'The tablet took it back, as it does when power is low. It is asked for again when the page is seen.',
  unavailable: 'This browser cannot keep the screen on. Lengthen the screen time in the settings of the tablet.',
}
