import { describe, expect, it } from 'vitest'
import { healText } from '../../../../src/app/heal-words'
import { putAway, registerForm } from '../../../../src/places/setup/registers'
import { roomText, storageLines } from '../../../../src/places/setup/storage-words'
import { mayTakeOver } from '../../../../src/places/setup/tablet-model'
import type { StorageState } from '../../../../src/ports/event-log'
import { fakeApp } from '../../app/import/fake-app'

const fine: StorageState = {
  database: 'open',
  journal: 'open',
  persisted: true,
  usedBytes: 1_234_000,
  quotaBytes: 2_100_000_000,
  compared: true,
}

describe('Setup', () => {
  it('keeps a balance with its masses in grams or with their unit', async () => {
    const { app } = fakeApp()
    const form = registerForm(app, 'balance', 'b1')
    for (const [key, text] of Object.entries({
      name: 'Balance 2',
      stepUg: '0,01',
      capacityUg: '2.2 kg',
      repeatabilityUg: '8 mg',
    }))
      form.set(key, text)
    expect(await form.save()).toBe(true)
    expect(app.catalogue.balances.value.get('b1')).toEqual({
      id: 'b1',
      name: 'Balance 2',
      stepUg: 10_000,
      capacityUg: 2_200_000_000,
      repeatabilityUg: 8000,
    })
  })

  it('a balance without readability is refused at that field', async () => {
    const form = registerForm(fakeApp().app, 'balance', 'b1')
    form.set('stepUg', '0')
    expect(await form.save()).toBe(false)
    expect(form.errors.value.stepUg).toBe('It must be more than zero.')
  })

  it('a person who is put away stays known', async () => {
    const { app } = fakeApp()
    await app.catalogue.save('person', { id: 'p', initials: 'JT', name: 'J. T.' })
    await putAway(app, 'person', 'p', true)
    expect(app.catalogue.people.value.get('p')).toMatchObject({ initials: 'JT', archived: true })
  })

  it('[S40] the state of both copies is said in words, each trouble louder than all well', () => {
    expect(storageLines(fine).map(({ tone }) => tone)).toEqual(['good', 'good', 'good', 'good'])
    expect(storageLines({ ...fine, database: 'dead' })[0]).toMatchObject({ tone: 'over' })
    expect(storageLines({ ...fine, journal: 'missing' })[1]?.text).toContain('one copy only')
    expect(storageLines({ ...fine, persisted: false })[3]).toMatchObject({ tone: 'caution' })
    expect(roomText(fine)).toBe('1.2 MB used of 2.1 GB')
    expect(roomText({ ...fine, usedBytes: null })).toContain('does not say')
    expect(healText({ code: 'HEALED_DATABASE', entries: 1, streams: 1 })).toContain('1 entry of 1 batch or document')
  })

  it('[U20] a new version is offered only while no timer of a batch in hand runs', () => {
    const withTimers = (timers: readonly unknown[]) =>
      ({ batches: { inHand: { value: [{ timers: [] }, { timers }] } } }) as unknown as Parameters<typeof mayTakeOver>[0]
    expect(mayTakeOver(withTimers([]))).toBe(true)
    expect(mayTakeOver(withTimers([{ id: 't' }]))).toBe(false)
  })
})
