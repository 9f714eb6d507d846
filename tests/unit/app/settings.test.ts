import { signal } from '@preact/signals'
import { beforeEach, describe, expect, test } from 'vitest'
import { createSettings, type KeptSettings } from '../../../src/app/settings'
import { openWorld, type World } from '../../support/app-world'

let world: World
let early: Map<string, string>

beforeEach(() => {
  world = openWorld()
  early = new Map()
})

const page = (): KeptSettings =>
  createSettings({
    log: world.store.log,
    writer: world.writer,
    people: signal(new Map()),
    root: { dataset: {} },
    early: { getItem: () => '.', setItem: (key, text) => void early.set(key, text) },
    calm: Promise.resolve(),
  })

describe('preferences', () => {
  test('[S53] what another page or a file brings counts at once, and the next change stands on it', async () => {
    const [here, there] = [page(), page()]
    await there.change({ studio: 'Quillwort Studio', theme: 'dark' })
    await expect.poll(() => here.value.value.studio).toBe('Quillwort Studio')
    expect(early.get('pannikin.theme')).toBe('dark')
    await here.change({ hand: 'left' })
    await expect.poll(() => there.value.value.hand).toBe('left')
    expect(there.value.value.studio).toBe('Quillwort Studio')
  })

  test('[S53] changes in quick succession all stand', async () => {
    const here = page()
    await Promise.all([here.change({ hand: 'left' }), here.change({ currency: '€' }), here.change({ theme: 'light' })])
    expect(here.value.value).toMatchObject({ hand: 'left', currency: '€', theme: 'light' })
    const again = page()
    await again.load()
    expect(again.value.value).toMatchObject({ hand: 'left', currency: '€', theme: 'light' })
  })
})
