import { beforeEach, describe, expect, test } from 'vitest'
import { createCatalogue, type KeptCatalogue } from '../../../src/app/catalogue'
import type { KeptHandle } from '../../../src/app/live-batch'
import type { Lot } from '../../../src/batch/catalogue'
import { openWorld, type World } from '../../support/app-world'
import { grams } from '../../support/batch'
import { formulas, lotionHeader } from '../../support/formulas'

let world: World
let catalogue: KeptCatalogue

const lot: Lot = { id: 'lot-w-0831', materialId: 'aqua', code: 'W-0831', receivedUg: grams(25_000), status: 'released' }

beforeEach(() => {
  world = openWorld()
  catalogue = createCatalogue({ log: world.store.log, writer: world.writer, by: () => 'person-rk' })
})

describe('the catalogue', () => {
  test('[S52] every save is an entry; the last one counts, the earlier ones are its trail', async () => {
    expect(await catalogue.save('lot', lot)).toBeNull()
    await catalogue.save('lot', { ...lot, status: 'quarantine' }, 'certificate missing')
    expect(catalogue.lots.value.get(lot.id)?.status).toBe('quarantine')
    const trail = await world.store.log.read(`lot:${lot.id}`)
    expect(trail.map((event) => event.body)).toEqual([
      { document: lot },
      { document: { ...lot, status: 'quarantine' }, reason: 'certificate missing' },
    ])
    expect(trail[1]?.parents).toEqual([trail[0]?.hash])
  })

  test('[S52] another page reads what was saved, in the order of names', async () => {
    for (const [id, name] of [
      ['1', 'Shea butter'],
      ['2', 'aqua'],
      ['3', 'Squalane'],
    ] as const)
      await catalogue.save('material', { id, name, inci: [], function: '' })
    const second = createCatalogue({ log: world.store.log, writer: world.writer, by: () => 'person-mo' })
    expect(second.loaded.value).toBe(false)
    await second.load()
    expect(second.loaded.value).toBe(true)
    expect([...second.materials.value.values()].map((material) => material.name)).toEqual([
      'aqua',
      'Shea butter',
      'Squalane',
    ])
  })

  test('[S52] what cannot be saved says so and is not shown as saved', async () => {
    world.store.setMood('full')
    expect(await catalogue.save('lot', lot)).toEqual({ code: 'STORAGE_FULL' })
    world.store.setMood('fail-database')
    expect(await catalogue.save('lot', lot)).toEqual({ code: 'STORAGE_DEAD' })
    expect(catalogue.lots.value.size).toBe(0)
  })

  test('[L52] on hand is what came in and was adjusted, less what the ledgers of all batches used', async () => {
    const adjustment = { at: '2026-11-02', massUg: -grams(40), reason: 'spilt', by: 'person-mo' }
    await catalogue.save('lot', { ...lot, adjustments: [adjustment] })
    await world.batches.start({ do: 'open', header: lotionHeader(), preflight: [] }, [])
    const handle = (await world.batches.open('one')) as KeptHandle
    const weigh = { do: 'weigh', step: 'a-water', reading: { mode: 're-tare', readingUg: grams('348.85') } } as const
    const weighed = await handle.intend(weigh)
    expect((await catalogue.onHand()).get(lot.id)).toBe(grams(25_000 - 40) - grams('348.85'))
    const entry = weighed.ok ? (weighed.entries[0] ?? '') : ''
    await handle.intend({ do: 'strike', entry, reason: 'wrong beaker' })
    expect((await catalogue.onHand()).get(lot.id)).toBe(grams(25_000 - 40))
    await handle.intend(weigh)
    await handle.intend({ do: 'discard-cup', vessel: 'main', reason: 'lumps' })
    expect((await catalogue.onHand()).get(lot.id)).toBe(grams(25_000 - 40) - grams('348.85'))
  })

  test('[P6] a revision that a batch used is known as used', async () => {
    await catalogue.save('formula', formulas.lotion)
    expect(await catalogue.usedRevisions('formula-lotion')).toEqual(new Set())
    await world.batches.start({ do: 'open', header: lotionHeader(), preflight: [] }, [])
    expect(await catalogue.usedRevisions('formula-lotion')).toEqual(new Set([3]))
  })
})
