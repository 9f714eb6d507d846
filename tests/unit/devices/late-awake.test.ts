import { describe, expect, it } from 'vitest'
import { lateAwake } from '../../../src/devices/awake/late-awake'
import { simulatedAwake } from '../../../src/devices/awake/simulated-awake'

describe('[U31] a wake lock that is fetched when it is asked for', () => {
  const world = () => {
    const lock = simulatedAwake()
    const fetched: number[] = []
    const heard: string[] = []
    const awake = lateAwake(async () => {
      fetched.push(1)
      return lock
    })
    awake.onChange((state) => heard.push(state))
    return { lock, fetched, heard, awake }
  }
  const come = () => new Promise((resolve) => setTimeout(resolve))

  it('is fetched once, and keeps the screen on from then on', async () => {
    const { lock, fetched, heard, awake } = world()
    expect(fetched).toEqual([])
    awake.keep()
    awake.keep()
    await come()
    expect(lock.wanted).toBe(true)
    awake.keep()
    lock.lose()
    expect([fetched, heard]).toEqual([[1], ['kept', 'kept', 'lost']])
  })

  it('asks for nothing where it is wanted no more when it comes', async () => {
    const { lock, heard, awake } = world()
    awake.keep()
    awake.release()
    await come()
    expect(lock.wanted).toBe(false)
    expect(heard).toEqual([])
    awake.keep()
    expect(lock.wanted).toBe(true)
    awake.release()
    expect(lock.wanted).toBe(false)
  })
})
