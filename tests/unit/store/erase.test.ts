import { describe, expect, it } from 'vitest'
import { askToErase, type EraseWorld, eraseIfAsked } from '../../../src/store/erase'

/** `heldFor`: how many times another page's lock is still seen. */
const world = (heldFor: number) => {
  let isLeft = false
  const deleted: string[] = []
  let looks = 0
  const eraseWorld: EraseWorld = {
    note: {
      isLeft: () => isLeft,
      leave: () => {
        isLeft = true
      },
      remove: () => {
        isLeft = false
      },
    },
    locks: { held: async () => new Set(looks++ < heldFor ? ['page:other'] : ['merge']) },
    deleteDatabase: async () => void deleted.push('database'),
    deleteJournal: async () => void deleted.push('journal'),
    deletePreferences: () => void deleted.push('preferences'),
    wait: async () => {},
  }
  return { eraseWorld, deleted }
}

describe('deleting all data', () => {
  it('[S41] nothing is deleted unless it was asked for', async () => {
    const { eraseWorld, deleted } = world(0)
    expect(await eraseIfAsked(eraseWorld)).toBe('nothing-asked')
    expect(deleted).toEqual([])
  })

  it('[S41] both copies go at the next start, once', async () => {
    const { eraseWorld, deleted } = world(3)
    askToErase(eraseWorld)
    expect(await eraseIfAsked(eraseWorld)).toBe('erased')
    expect(deleted).toEqual(['database', 'journal', 'preferences'])
    expect(await eraseIfAsked(eraseWorld)).toBe('nothing-asked')
  })

  it('[S41] while another page is open nothing is deleted, and it is not tried again by itself', async () => {
    const { eraseWorld, deleted } = world(1000)
    askToErase(eraseWorld)
    expect(await eraseIfAsked(eraseWorld)).toBe('refused')
    expect(deleted).toEqual([])
    expect(await eraseIfAsked(eraseWorld)).toBe('nothing-asked')
  })
})
