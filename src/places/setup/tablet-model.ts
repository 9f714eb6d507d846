import { type ReadonlySignal, signal } from '@preact/signals'
import type { App } from '../../app/app'

export type AlarmState = App['alarm']['state']
export type AwakeState = Parameters<Parameters<App['awake']['onChange']>[0]>[0]

/** The bell and the screen, tried out. */
export interface TabletModel {
  readonly alarm: ReadonlySignal<AlarmState>
  readonly tested: ReadonlySignal<boolean>
  readonly awake: ReadonlySignal<AwakeState | 'not-tried'>
  readonly testAlarm: () => void
  readonly tryAwake: () => void
  readonly dispose: () => void
}

export function createTabletModel(app: App): TabletModel {
  const alarm = signal(app.alarm.state)
  const tested = signal(false)
  const awake = signal<AwakeState | 'not-tried'>('not-tried')
  const stopAlarm = app.alarm.onChange((state) => {
    alarm.value = state
  })
  const stopAwake = app.awake.onChange((state) => {
    awake.value = state
  })
  return {
    alarm,
    tested,
    awake,
    testAlarm: () => {
      app.alarm.unlock()
      app.alarm.test()
      tested.value = true
    },
    tryAwake: () => app.awake.keep(),
    dispose: () => {
      stopAlarm()
      stopAwake()
      if (awake.value !== 'not-tried') app.awake.release()
    },
  }
}

/** A new version waits until no timer runs: a reload in the middle of a step helps nobody. */
export const mayTakeOver = (app: App): boolean => app.batches.inHand.value.every(({ timers }) => timers.length === 0)
