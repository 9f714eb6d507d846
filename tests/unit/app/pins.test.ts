import { beforeEach, describe, expect, test } from 'vitest'
import { waitAfter } from '../../../src/app/sign/pin-tries'
import { createPins, iterationsToday, type Pins, type PinsWorld } from '../../../src/app/sign/pins'
import { faultInBody } from '../../../src/batch/schemas/sound-body'
import { webSlowHash } from '../../../src/devices/slow-hash/web-slow-hash'
import type { World } from '../../support/app-world'
import { minutesMs } from '../../support/batch'
import { signWorld } from '../../support/sign-world'

let world: World
let app: PinsWorld
let pins: Pins

beforeEach(async () => {
  ;({ world, app } = signWorld())
  pins = createPins(app)
  expect(await pins.set('person-mo', '4711', { known: 'none' })).toBeNull()
})

const codeOf = async (text: string): Promise<string> => {
  const answer = await pins.check('person-mo', text)
  return answer.ok ? 'right' : answer.refusal.code
}

describe('a PIN', () => {
  test('[E80] is an entry of its person’s stream, salted and slow, and nothing of it is the PIN', async () => {
    await pins.set('person-rk', '4711', { known: 'none' })
    const [mo] = await world.store.log.read('person:person-mo')
    expect(mo).toMatchObject({ kind: 'pin-set', by: 'person-rk', body: { how: 'first' } })
    expect(mo?.body).toMatchObject({ pin: { iterations: iterationsToday } })
    expect(iterationsToday).toBeGreaterThanOrEqual(600_000)
    expect(JSON.stringify(mo?.body)).not.toContain('4711')
    const [one, other] = [await pins.of('person-mo'), await pins.of('person-rk')]
    expect(one?.pin.salt).not.toBe(other?.pin.salt)
    expect(one?.pin.hash).not.toBe(other?.pin.hash)
    expect(mo && faultInBody(mo)).toBeNull()
    const few = { pin: { ...one?.pin, iterations: 'few' }, how: 'first' }
    expect(mo && faultInBody({ ...mo, body: few })).toBe('body.pin.iterations')
  })

  test('[E80] stays out of the list of people', async () => {
    const head = await world.store.log.head('person:person-mo')
    expect(JSON.stringify(head?.summary)).not.toContain('salt')
  })

  test('[E80] is hashed as PBKDF2 with SHA-256 is written down (RFC 7914, section 11)', async () => {
    const hash = await webSlowHash().hash('passwd', 'salt', 1)
    expect(hash).toBe('55ac046e56e3089fec1691c22544b605f94185216dde0465e68b9d57c20dacbc')
    expect(webSlowHash().newSalt()).toMatch(/^[0-9a-f]{32}$/)
  })

  test('[E81] is told from a wrong one, and a right one forgets the wrong ones', async () => {
    expect(await codeOf('4711')).toBe('right')
    for (let round = 0; round < 3; round += 1) {
      expect(await codeOf('0000')).toBe('PIN_WRONG')
      expect(await codeOf('0001')).toBe('PIN_WRONG')
      expect(await codeOf('4711')).toBe('right')
    }
  })

  test('[E81] after five wrong tries waits, over a reload too, and longer each time', async () => {
    for (let wrong = 1; wrong < 5; wrong += 1) expect(await codeOf('0000')).toBe('PIN_WRONG')
    expect(await codeOf('0000')).toBe('PIN_WAIT')
    pins = createPins(app)
    expect(await codeOf('4711')).toBe('PIN_WAIT')
    world.clock.advance(minutesMs(5) - 1)
    expect(await codeOf('4711')).toBe('PIN_WAIT')
    world.clock.advance(1)
    expect(await codeOf('0000')).toBe('PIN_WAIT')
    world.clock.advance(minutesMs(10))
    expect(await codeOf('4711')).toBe('right')
    expect([4, 5, 6, 7, 20].map(waitAfter)).toEqual([0, 5, 10, 20, 60].map(minutesMs))
  })

  test('[E81] is counted before it is looked at: two tries at once are two', async () => {
    await Promise.all(['0000', '0001', '0002', '0003'].map(codeOf))
    expect(await codeOf('0004')).toBe('PIN_WAIT')
  })

  test('[E81] a clock that is put back makes no wait longer', async () => {
    for (let wrong = 0; wrong < 5; wrong += 1) await codeOf('0000')
    world.clock.advance(-minutesMs(60))
    expect(await pins.check('person-mo', '4711')).toMatchObject({ refusal: { waitMs: minutesMs(5) } })
  })

  test('[E85] is changed by who knows it, set anew with a reason by who does not, and both stand in the trail', async () => {
    expect(await pins.set('person-mo', '2222', { known: 'none' })).toMatchObject({ code: 'PIN_THERE' })
    expect(await pins.set('person-mo', '2222', { known: 'given', current: '1111' })).toMatchObject({
      code: 'PIN_WRONG',
    })
    expect(await pins.set('person-mo', '2222', { known: 'given', current: '4711' })).toBeNull()
    expect(await pins.set('person-mo', '3333', { known: 'forgotten', reason: ' ' })).toMatchObject({
      code: 'REASON_MISSING',
    })
    expect(await pins.set('person-mo', '3333', { known: 'forgotten', reason: 'back from leave' })).toBeNull()
    expect(await codeOf('3333')).toBe('right')
    const trail = await world.store.log.read('person:person-mo')
    expect(trail.map(({ body }) => (body as { how: string }).how)).toEqual(['first', 'changed', 'forgotten'])
    expect(trail.at(-1)).toMatchObject({ by: 'person-rk', body: { reason: 'back from leave' } })
  })

  test('[E85] is taken away by who knows it', async () => {
    expect(await pins.remove('person-mo', '0000')).toMatchObject({ code: 'PIN_WRONG' })
    expect(await pins.remove('person-mo', '4711')).toBeNull()
    expect(await pins.of('person-mo')).toBeNull()
    expect(await codeOf('4711')).toBe('PIN_NONE')
  })

  test('[E80] has four to twelve digits', async () => {
    for (const bad of ['', '123', '12a4', '1234567890123']) {
      expect(await pins.set('person-jt', bad, { known: 'none' })).toEqual({ code: 'PIN_SHAPE' })
    }
  })
})
