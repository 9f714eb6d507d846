import { effect, signal } from '@preact/signals'
import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest'
import { createFrameBehind } from '../../../../src/places/run/a-frame-behind'
import { typedAfter } from '../../../../src/places/run/draft'

describe('what comes a frame after the row', () => {
  let frames: (() => void)[] = []
  beforeEach(() => {
    frames = []
    vi.stubGlobal('requestAnimationFrame', (work: () => void) => frames.push(work))
    vi.stubGlobal('matchMedia', () => ({ matches: false }))
  })
  afterEach(() => {
    vi.unstubAllGlobals()
  })
  const nextFrame = async () => {
    for (const work of frames.splice(0)) work()
    await new Promise((resolve) => setTimeout(resolve, 0))
  }

  const drawn = () => {
    const behind = createFrameBehind()
    const source = signal('asked')
    const seen: string[] = []
    const lagging = behind.lag(source)
    effect(() => {
      seen.push(lagging.value)
    })
    return { behind, source, seen }
  }

  test('[U30] stays as it was until that frame stands, and then moves on in one go', async () => {
    const { behind, source, seen } = drawn()
    const followed = behind.after(() => {
      source.value = 'moved on'
    })
    source.value = 'recorded'
    await nextFrame()
    expect(seen).toEqual(['asked'])
    await nextFrame()
    await followed
    expect(seen).toEqual(['asked', 'moved on'])
  })

  test('[U30] moves on at once where a person is faster, and only once', async () => {
    const { behind, source, seen } = drawn()
    let times = 0
    const followed = behind.after(() => {
      times += 1
      source.value = 'moved on'
    })
    expect(behind.flush()).toBe(true)
    expect(seen).toEqual(['asked', 'moved on'])
    expect(behind.flush()).toBe(false)
    await nextFrame()
    await nextFrame()
    await followed
    expect(times).toBe(1)
  })

  test('[U30] waits for no frame where no row is in sight', () => {
    vi.stubGlobal('matchMedia', () => ({ matches: true }))
    const { behind, source, seen } = drawn()
    void behind.after(() => {
      source.value = 'moved on'
    })
    expect(seen).toEqual(['asked', 'moved on'])
  })
})

test.each([
  ['0.17', '0.175', '5'],
  ['0.17', '0.1', ''],
  ['0.17', '0.17', '0.17'],
  ['0.17', '0.25', '0.25'],
  ['', '5', '5'],
])('[U30] after %s was recorded, %s in its field is %j for the next', (recorded, text, meant) => {
  expect(typedAfter(recorded, text)).toBe(meant)
})
