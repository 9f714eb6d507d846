import type { Alarm, AlarmState } from '../../ports/alarm'
import type { Channel } from './channel'
import { recordingChannel } from './recording-channel'
import { toneChannel } from './tone-channel'

const strokeEveryMs = 1800
const vibrationMs = [400, 150, 400]

/** The bell of the browser: two tones by Web Audio, a recording where that is dead, vibration where there is one. */
export const webAlarm = (recordingUrl: string): Alarm =>
  alarmOf([toneChannel(), recordingChannel(recordingUrl)], () => {
    navigator.vibrate?.(vibrationMs)
  })

/** An alarm of these channels, the first that sounds being the one that is heard. */
export const alarmOf = (channels: readonly Channel[], vibrate: () => void): Alarm => {
  const listeners = new Set<(state: AlarmState) => void>()
  const ringing = new Set<string>()
  let state: AlarmState = 'locked'
  let strokes: ReturnType<typeof setInterval> | undefined

  const enter = (next: AlarmState): void => {
    if (state === next) return
    state = next
    for (const listener of listeners) listener(next)
  }

  const strike = async (stillWanted: () => boolean): Promise<void> => {
    vibrate()
    for (const channel of channels) {
      if (await channel.strike(stillWanted)) return enter('ready')
      if (!stillWanted()) return
    }
    if (state !== 'locked') enter('broken')
  }

  const unlock = async (): Promise<void> => {
    // All of them at once: a tap that has waited for the first channel is too old for the second.
    const opened = await Promise.all(channels.map((channel) => channel.unlock().catch(() => false)))
    enter(opened.includes(true) ? 'ready' : 'broken')
  }

  return {
    unlock: () => void unlock(),
    ring: (id) => {
      ringing.add(id)
      const wanted = () => ringing.size > 0
      if (strokes !== undefined) return
      void strike(wanted)
      strokes = setInterval(() => void strike(wanted), strokeEveryMs)
    },
    stop: (id) => {
      ringing.delete(id)
      if (ringing.size > 0) return
      clearInterval(strokes)
      strokes = undefined
      for (const channel of channels) channel.hush()
    },
    test: () => void strike(() => true),
    get state() {
      return state
    },
    onChange: (callback) => {
      listeners.add(callback)
      return () => listeners.delete(callback)
    },
  }
}
