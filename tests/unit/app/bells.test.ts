import { signal } from '@preact/signals'
import { beforeEach, describe, expect, test } from 'vitest'
import { createBells } from '../../../src/app/bells'
import type { KeptHandle } from '../../../src/app/live-batch'
import { silentAlarm } from '../../../src/devices/alarm/silent-alarm'
import { openWorld, type World } from '../../support/app-world'
import { minutesMs } from '../../support/batch'
import { lotionHeader } from '../../support/formulas'

let world: World
let handle: KeptHandle
const badge = { shown: 0, show: (count: number) => void Object.assign(badge, { shown: count }) }

beforeEach(async () => {
  world = openWorld()
  await world.batches.start({ do: 'open', header: lotionHeader(), preflight: [] }, [])
  handle = (await world.batches.open('one')) as KeptHandle
})

function ringWith() {
  const alarm = silentAlarm()
  const nowMs = signal(world.clock.nowMs())
  const bells = createBells({ batches: world.batches, nowMs, alarm, badge })
  const wait = (minutes: number): void => {
    world.clock.advance(minutesMs(minutes))
    nowMs.value = world.clock.nowMs()
  }
  return { alarm, bells, wait }
}

const start = (label: string, minutes: number) => handle.intend({ do: 'start-timer', label, minutes })

describe('the bells', () => {
  test('[T7] a timer rings when its time has come, until somebody stops it, and that is recorded', async () => {
    const { alarm, bells, wait } = ringWith()
    await start('Hydrate', 20)
    wait(19)
    expect(bells.ringing.value).toEqual([])
    wait(1)
    expect(bells.ringing.value).toMatchObject([{ batch: 'one', batchName: 'Lotion 041', label: 'Hydrate' }])
    expect(alarm.ringing).toHaveLength(1)
    expect(badge.shown).toBe(1)
    wait(5)
    const [bell] = bells.ringing.value
    if (!bell) throw new Error('no bell')
    await bells.stop(bell)
    expect(alarm.ringing).toEqual([])
    expect(bells.ringing.value).toEqual([])
    expect(badge.shown).toBe(0)
    expect(handle.view.value.state.timers.get(bell.timer)?.acknowledged?.lateMs).toBe(minutesMs(5))
    bells.dispose()
  })

  test('[T7] several ring at once, the first to come first; a tablet that slept rings for all of them', async () => {
    const { alarm, bells, wait } = ringWith()
    await start('late', 30)
    await start('soon', 10)
    wait(600)
    expect(bells.ringing.value.map((bell) => bell.label)).toEqual(['soon', 'late'])
    expect(alarm.ringing).toHaveLength(2)
    bells.dispose()
  })

  test('[T7] a clock that goes on changes the list only when a bell does', async () => {
    const { bells, wait } = ringWith()
    await start('soon', 1)
    wait(2)
    const before = bells.ringing.value
    wait(1)
    expect(bells.ringing.value).toBe(before)
    bells.dispose()
  })
})
