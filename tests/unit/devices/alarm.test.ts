import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest'
import type { Channel } from '../../../src/devices/alarm/channel'
import { lateAlarm } from '../../../src/devices/alarm/late-alarm'
import { silentAlarm } from '../../../src/devices/alarm/silent-alarm'
import { alarmOf } from '../../../src/devices/alarm/web-alarm'

const channel = (works: { now: boolean }) => {
  const made = { strokes: 0, hushed: 0 }
  const face: Channel = {
    unlock: async () => works.now,
    strike: async (stillWanted) => {
      if (works.now && stillWanted()) made.strokes += 1
      return works.now
    },
    hush: () => {
      made.hushed += 1
    },
  }
  return { ...face, made }
}

describe('the alarm', () => {
  beforeEach(() => void vi.useFakeTimers())
  afterEach(() => void vi.useRealTimers())

  it('[T21] rings until every timer that rings is stopped', async () => {
    const first = channel({ now: true })
    const alarm = alarmOf([first], () => undefined)
    alarm.ring('hydrate')
    alarm.ring('hold')
    alarm.stop('hydrate')
    await vi.advanceTimersByTimeAsync(10_000)
    const before = first.made.strokes
    alarm.stop('hold')
    await vi.advanceTimersByTimeAsync(10_000)
    expect(before).toBeGreaterThan(4)
    expect(first.made).toEqual({ strokes: before, hushed: 1 })
  })

  it('[T21] uses the recording while the tones are dead, and the tones again when they are back', async () => {
    const tonesWork = { now: false }
    const tones = channel(tonesWork)
    const recording = channel({ now: true })
    const alarm = alarmOf([tones, recording], () => undefined)
    alarm.ring('hold')
    await vi.advanceTimersByTimeAsync(100)
    expect([tones.made.strokes, recording.made.strokes]).toEqual([0, 1])
    tonesWork.now = true
    await vi.advanceTimersByTimeAsync(1800)
    expect([tones.made.strokes, recording.made.strokes]).toEqual([1, 1])
  })

  it('[T21] is locked before the first tap, ready after it, and says when no channel sounds', async () => {
    const works = { now: true }
    const heard: string[] = []
    const alarm = alarmOf([channel(works)], () => undefined)
    alarm.onChange((state) => heard.push(state))
    expect(alarm.state).toBe('locked')
    alarm.unlock()
    await vi.advanceTimersByTimeAsync(0)
    works.now = false
    alarm.test()
    await vi.advanceTimersByTimeAsync(0)
    expect(heard).toEqual(['ready', 'broken'])
  })

  it('vibrates with every stroke', async () => {
    const vibrate = vi.fn()
    const alarm = alarmOf([channel({ now: true })], vibrate)
    alarm.ring('hold')
    await vi.advanceTimersByTimeAsync(3700)
    alarm.stop('hold')
    expect(vibrate).toHaveBeenCalledTimes(3)
  })
})

describe('the silent alarm', () => {
  it('remembers what rings, and breaks when told to', () => {
    const alarm = silentAlarm()
    alarm.ring('a')
    alarm.ring('b')
    alarm.stop('a')
    alarm.test()
    alarm.unlock()
    expect([alarm.ringing, alarm.tests, alarm.state]).toEqual([['b'], 1, 'ready'])
    const broken = silentAlarm(false)
    broken.unlock()
    expect(broken.state).toBe('broken')
  })
})

describe('a bell whose works come late', () => {
  it('[T21] begins what should ring already, and not what was stopped since', async () => {
    const works = silentAlarm()
    const alarm = lateAlarm(async () => works)
    alarm.ring('hydrate')
    alarm.ring('hold')
    alarm.stop('hold')
    await Promise.resolve()
    expect(works.ringing).toEqual(['hydrate'])
  })

  it('hands a tap on that came before its works, and says what became of it', async () => {
    const alarm = lateAlarm(async () => silentAlarm())
    const heard: string[] = []
    alarm.onChange((state) => heard.push(state))
    alarm.unlock()
    expect(alarm.state).toBe('locked')
    await Promise.resolve()
    expect(heard).toEqual(['ready'])
    expect(alarm.state).toBe('ready')
  })
})
