import { beforeEach, describe, expect, test } from 'vitest'
import { isDone, statusOf } from '../../../../src/batch/progress'
import { panelOf } from '../../../../src/places/run/deviation-model'
import { grams } from '../../../support/batch'
import { openRun, type RunWorld, settle, weigh } from './run-app'

let world: RunWorld

beforeEach(async () => {
  world = await openRun()
})

const state = () => world.handle.view.value.state
const entryOf = (step: string): string => state().steps.get(step)?.weighings.at(-1)?.id ?? ''

describe('the step in hand', () => {
  test('[W20] is what comes next, until another one is taken', () => {
    expect(world.run.stepId.value).toBe('a-water')
    world.run.take('b-squalane')
    expect(world.run.planned.value?.step.kind).toBe('weigh')
    expect(world.went.at(-1)).toEqual({ place: 'run', batch: 'one', step: 'b-squalane' })
  })

  test('[W20] is taken in hand by the ladder without being skipped or begun', () => {
    world.run.take('b-squalane')
    expect(state().entries).toHaveLength(1)
    expect(statusOf(state(), 'a-water')).toBe('open')
  })

  test('[W20] follows the address, and an unknown step of it changes nothing', () => {
    world.app.go({ place: 'run', batch: 'one', step: 'a-oat' })
    expect(world.run.stepId.value).toBe('a-oat')
    world.app.go({ place: 'run', batch: 'one', step: 'no-such-step' })
    expect(world.run.stepId.value).toBe('a-oat')
  })

  test('[W20] moves on to the next weighing of its phase once it is done, and stays while it is part weighed', async () => {
    expect(await weigh(world.run, '300')).toBe(true)
    expect(world.run.stepId.value).toBe('a-water')
    expect(await weigh(world.run, '48.85')).toBe(true)
    expect(world.run.stepId.value).toBe('a-phytate')
  })

  test('[W20] is not moved by what another page records', async () => {
    await world.handle.intend({ do: 'weigh', step: 'a-water', reading: { mode: 're-tare', readingUg: grams(348.85) } })
    expect(world.run.stepId.value).toBe('a-water')
    expect(isDone(state(), 'a-water')).toBe(true)
  })
})

describe('what is typed', () => {
  test('[W21] is judged as it is typed: to go, within, over, by how much', () => {
    world.run.type('reading', '300')
    expect(world.run.judged.value).toEqual({ state: 'to-go', netUg: grams(300), byUg: grams(48.85) })
    world.run.type('reading', '348.9')
    expect(world.run.judged.value?.state).toBe('within')
    world.run.type('reading', '360')
    expect(world.run.judged.value).toMatchObject({ state: 'over', byUg: grams(11.15) })
  })

  test('[W21] of a second weighing is judged against what is left', async () => {
    await weigh(world.run, '300')
    world.run.type('reading', '48.85')
    expect(world.run.judged.value?.state).toBe('within')
  })

  test('[W22] survives a step change', () => {
    world.run.type('reading', '123.4')
    world.run.take('b-squalane')
    expect(world.run.draft.value.fields.reading).toBeUndefined()
    world.run.take('a-water')
    expect(world.run.draft.value.fields.reading).toBe('123.4')
  })

  test('[W22] survives a reload, with the way of reading the balance', async () => {
    world.run.setMode('by-difference')
    world.run.type('before', '250.31')
    world.run.dispose()
    const again = world.comeBack()
    await settle()
    expect(again.draft.value).toMatchObject({ mode: 'by-difference', fields: { before: '250.31' } })
  })

  test('[W22] is forgotten once it is recorded, and only then', async () => {
    expect(await weigh(world.run, '900')).toBe(false)
    expect(world.run.draft.value.fields.reading).toBe('900')
    expect(world.run.refusal.value?.code).toBe('OVER_VESSEL')
    await weigh(world.run, '348.85')
    expect(world.run.drafts.of('a-water').fields.reading).toBeUndefined()
  })

  test('[W22] stays typed when nothing can be saved, and is not entered twice', async () => {
    world.store.setMood('fail-both')
    expect(await weigh(world.run, '348.85')).toBe(false)
    expect(world.run.draft.value.fields.reading).toBe('348.85')
    expect(world.handle.unsaved.value).toHaveLength(1)
    expect(await world.run.record()).toBe(false)
    expect(world.handle.unsaved.value).toHaveLength(1)
    world.store.setMood('well')
    await world.run.retry()
    expect(state().steps.get('a-water')?.weighings).toHaveLength(1)
    expect(world.run.drafts.of('a-water').fields.reading).toBeUndefined()
    expect(world.run.stepId.value).toBe('a-phytate')
  })
})

describe('taking back', () => {
  test('[E50] undo writes a strike-out and takes the step in hand again', async () => {
    await weigh(world.run, '348.85')
    const entry = entryOf('a-water')
    await world.app.justDone.value?.undo()
    expect(world.app.justDone.value).toBeNull()
    expect(world.run.stepId.value).toBe('a-water')
    expect(isDone(state(), 'a-water')).toBe(false)
    expect(state().entries.find(({ event }) => event.id === entry)?.struck?.reason).toBe('undone at once')
  })

  test('[E50] an old entry is struck out with its reason and typed again', async () => {
    await weigh(world.run, '348.85')
    await world.run.strike(entryOf('a-water'), 'mistyped')
    world.run.take('a-water')
    await weigh(world.run, '349.1')
    expect(state().steps.get('a-water')?.netUg).toBe(grams(349.1))
  })
})

describe('an over-weighing', () => {
  test('[R40] in a vessel opens the panel with the first way on chosen', async () => {
    await weigh(world.run, '360')
    expect(world.run.stepId.value).toBe('a-water')
    const panel = panelOf(world.run)
    expect(panel?.deviation.inCup).toBe(false)
    expect(panel?.ways.map(({ kind }) => kind)).toEqual(['qs', 'cost', 'discard', 'accept'])
    expect(panel?.chosen).toBe(panel?.ways.find(({ feasible }) => feasible))
  })

  test('[R40] is not accepted without a reason', async () => {
    await weigh(world.run, '360')
    world.run.type('way', 'accept')
    expect(panelOf(world.run)?.needsReason).toBe(true)
    expect(await world.run.settle()).toBe(false)
    world.run.type('reason', 'trial batch')
    expect(await world.run.settle()).toBe(true)
    expect(panelOf(world.run)).toBeNull()
  })

  test('[R40] of a cup can be taken out, as a mass or as what the balance shows then', async () => {
    world.run.take('a-propanediol')
    await weigh(world.run, '20.02')
    world.run.take('c-tocopherol')
    await weigh(world.run, '1.83')
    expect(panelOf(world.run)?.ways.map(({ kind }) => kind)).toEqual(['take-out', 'discard-cup', 'accept'])
    world.run.type('again', '1.5')
    expect(await world.run.settle()).toBe(true)
    expect(state().steps.get('c-tocopherol')?.netUg).toBe(grams(1.5))
  })

  test('[R40] that was mistyped is struck out and leaves nothing to settle', async () => {
    await weigh(world.run, '360')
    await world.run.strike(panelOf(world.run)?.deviation.entry ?? '', 'mistyped')
    expect(panelOf(world.run)).toBeNull()
    expect(world.run.stepId.value).toBe('a-water')
  })
})
