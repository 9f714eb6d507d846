import { describe, expect, it } from 'vitest'
import { simulatedAwake } from '../../../src/devices/awake/simulated-awake'
import { rememberingBadge } from '../../../src/devices/badge/remembering-badge'
import { countingIds } from '../../../src/devices/ids/counting-ids'
import { uuidIds } from '../../../src/devices/ids/uuid-ids'
import { collectingShare } from '../../../src/devices/share/collecting-share'
import { refuse } from '../../../src/trade/result'

const uuidv7 = /^[0-9a-f]{8}-[0-9a-f]{4}-7[0-9a-f]{3}-[89ab][0-9a-f]{3}-[0-9a-f]{12}$/

describe('ids', () => {
  it('are uuidv7s that never go back, counted or not', () => {
    for (const ids of [countingIds(), uuidIds()]) {
      const made = Array.from({ length: 1000 }, () => ids.next())
      expect(made.every((id) => uuidv7.test(id))).toBe(true)
      expect([...made].sort()).toEqual(made)
      expect(new Set(made).size).toBe(1000)
    }
  })
})

describe('the ids of the browser', () => {
  it('begin with the moment in 48 bits, and go on counting where the clock stands or goes back', () => {
    const moments = [1_800_000_000_000, ...Array.from({ length: 5000 }, () => 1_700_000_000_000)]
    const ids = uuidIds(() => moments.shift() ?? 0)
    const made = Array.from({ length: 5001 }, () => ids.next())
    expect(Number.parseInt(made[0]?.replace('-', '').slice(0, 12) ?? '', 16)).toBe(1_800_000_000_000)
    expect(made.every((id) => uuidv7.test(id))).toBe(true)
    expect([...made].sort()).toEqual(made)
    expect(new Set(made).size).toBe(5001)
  })

  it('share nothing but the moment with those of another tablet', () => {
    const [here, there] = [uuidIds(() => 1), uuidIds(() => 1)]
    const tails = [here, there].flatMap((ids) => Array.from({ length: 500 }, () => ids.next().slice(19)))
    expect(new Set(tails).size).toBe(1000)
  })
})

describe('the simulated screen', () => {
  it('stays on when asked, and tells of its loss only while wanted', () => {
    const awake = simulatedAwake()
    const heard: string[] = []
    awake.onChange((state) => heard.push(state))
    awake.lose()
    awake.keep()
    awake.lose()
    awake.release()
    awake.lose()
    expect(heard).toEqual(['kept', 'lost'])
    expect(awake.wanted).toBe(false)
  })

  it('says where a browser cannot keep it on', () => {
    const awake = simulatedAwake(false)
    const heard: string[] = []
    awake.onChange((state) => heard.push(state))
    awake.keep()
    expect(heard).toEqual(['unavailable'])
  })
})

describe('the remembering badge', () => {
  it('keeps the last count', () => {
    const badge = rememberingBadge()
    badge.show(3)
    badge.show(0)
    expect(badge.count).toBe(0)
  })
})

describe('the collecting share', () => {
  it('keeps files whole, from bytes and from a stream', async () => {
    const share = collectingShare()
    await share.saveFile('a.txt', 'text/plain', new TextEncoder().encode('cup'))
    await share.saveFile('b.txt', 'text/plain', new Blob(['beaker']).stream())
    expect(share.files.map(({ name, bytes }) => [name, new TextDecoder().decode(bytes)])).toEqual([
      ['a.txt', 'cup'],
      ['b.txt', 'beaker'],
    ])
  })

  it('keeps nothing where it was told to refuse', async () => {
    const share = collectingShare(refuse({ code: 'SHARE_FAILED' as const }))
    const answer = await share.saveFile('a.txt', 'text/plain', new Blob(['cup']))
    expect(answer).toEqual({ ok: false, refusal: { code: 'SHARE_FAILED' } })
    expect(share.files).toHaveLength(0)
  })
})
