import { beforeEach, describe, expect, test } from 'vitest'
import { decide } from '../../../src/batch/decide'
import { foldBatch } from '../../../src/batch/fold'
import type { Intention } from '../../../src/batch/intention'
import { recordOf } from '../../../src/batch/record'
import { faultInBody } from '../../../src/batch/schemas/sound-body'
import type { Signature } from '../../../src/batch/signature'
import { countingIds } from '../../../src/devices/ids/counting-ids'
import { forkOf, grams, openTestBench, type TestBench } from '../../support/batch'
import { lotionHeader } from '../../support/formulas'
import { runUpTo } from '../../support/run'

const rk: Signature = { person: 'person-rk', meaning: 'performed', how: 'name' }
const mo: Signature = { person: 'person-mo', meaning: 'checked', how: 'pin', pinSetAt: '2026-11-03T09:00:00Z' }

let bench: TestBench

beforeEach(() => {
  bench = openTestBench(lotionHeader())
})

const seen = () => bench.state.lastHash
const close = (by: readonly Signature[], at = seen()): Intention => ({
  do: 'close',
  decision: 'hold',
  note: 'trial',
  signatures: { by, seen: at },
})
const signatures = () => recordOf(bench.state).signatures

describe('closing', () => {
  test('[E82] is signed with the decision: each signature names the entry it stands on', () => {
    const [closed, first, second] = bench.intend(close([rk, mo]))
    expect([closed, first, second].map((event) => event?.kind)).toEqual(['closed', 'signed', 'signed'])
    expect(first?.body).toEqual({ ...rk, head: closed?.hash })
    expect(second?.body).toEqual({ ...mo, head: first?.hash })
    expect([first, second].map((event) => event && faultInBody(event))).toEqual([null, null])
    expect(signatures()).toMatchObject([
      { person: 'RK', meaning: 'performed', how: 'name', covers: 2, after: { entries: 0 } },
      { person: 'MO', meaning: 'checked', how: 'pin', pinSetAt: '2026-11-03T09:00:00Z', covers: 3 },
    ])
  })

  test('[E82] nobody signs what was written after they looked', () => {
    const before = seen()
    bench.intend({ do: 'note', text: 'written meanwhile' })
    expect(bench.refusal(close([rk], before))).toEqual({ code: 'CHANGED_MEANWHILE' })
    expect(bench.refusal({ do: 'sign', signatures: { by: [rk], seen: before } })).toEqual({ code: 'CHANGED_MEANWHILE' })
  })

  test('[E83] who performed does not check', () => {
    expect(bench.refusal(close([rk, { ...mo, person: 'person-rk' }]))).toEqual({ code: 'SAME_PERSON' })
    bench.intend(close([rk]))
    const later: Intention = { do: 'sign', signatures: { by: [{ ...mo, person: 'person-rk' }], seen: seen() } }
    expect(bench.refusal(later)).toEqual({ code: 'SAME_PERSON' })
  })

  test('[E82] a closed batch is still signed as reviewed', () => {
    bench.intend(close([rk, mo]))
    const review: Signature = { person: 'person-jt', meaning: 'reviewed and released', how: 'name' }
    bench.intend({ do: 'sign', signatures: { by: [review], seen: seen() } })
    expect(signatures().at(-1)).toMatchObject({ meaning: 'reviewed and released', covers: 4 })
  })

  test('[E82] without meaning, or empty, is no signature', () => {
    for (const by of [[], [{ ...rk, meaning: ' ' }], [{ ...rk, person: '' }]])
      expect(bench.refusal(close(by))).toEqual({ code: 'SIGNATURE_BAD' })
  })

  test('[E85] in another person’s place is signed with a reason, and the record has both', () => {
    const instead: Signature = { person: 'person-jt', meaning: 'checked', how: 'name', insteadOf: 'person-mo' }
    expect(bench.refusal(close([instead]))).toEqual({ code: 'SIGNATURE_BAD' })
    bench.intend(close([rk, { ...instead, reason: 'PIN forgotten' }]))
    expect(signatures()[1]).toMatchObject({ person: 'JT', insteadOf: 'MO', reason: 'PIN forgotten' })
  })

  test('a signature is never struck out', () => {
    const signed = bench.intend(close([rk])).at(-1)
    const refusal = bench.refusal({ do: 'strike', entry: signed?.id ?? '', reason: 'never mind' })
    expect(refusal).toEqual({ code: 'CANNOT_BE_STRUCK', kind: 'signed' })
  })
})

describe('after a signature', () => {
  test('[E84] what was added or struck is told, further signatures are not', () => {
    const weighed = bench.weigh('a-phytate', '1')
    bench.intend(close([rk]))
    bench.intend({ do: 'sign', signatures: { by: [mo], seen: seen() } })
    expect(signatures().map(({ after }) => after.entries)).toEqual([0, 0])
    bench.intend({ do: 'note', text: 'thicker than the last one' })
    bench.strike(weighed)
    expect(signatures()[0]?.after).toEqual({ entries: 2, strikes: 1 })
    expect(signatures()[1]?.after).toEqual({ entries: 2, strikes: 1 })
  })

  test('[E84] what another tablet wrote without knowing of it is not covered, wherever it stands in order', () => {
    const other = forkOf(bench.events, 'a-tablet')
    bench.intend({ do: 'note', text: 'here' })
    bench.intend(close([rk]))
    other.intend({ do: 'note', text: 'there' })
    const merged = foldBatch([...bench.events, ...other.events.slice(1)])
    expect(recordOf(merged).signatures[0]?.after).toEqual({ entries: 1, strikes: 0 })
  })
})

describe('the tablet', () => {
  test('[E91] signs an end that is there, once with one key', () => {
    const head = bench.intend(close([rk])).at(-1)?.hash ?? ''
    const signed = { head, key: 'ab', publicKey: '', signature: '' }
    expect(bench.intend({ do: 'sign-head', signed })).toHaveLength(1)
    expect(bench.intend({ do: 'sign-head', signed })).toEqual([])
    expect(bench.intend({ do: 'sign-head', signed: { ...signed, key: 'cd' } })).toHaveLength(1)
    const elsewhere = { ...signed, head: '0'.repeat(64) }
    expect(bench.refusal({ do: 'sign-head', signed: elsewhere })).toEqual({ code: 'NO_SUCH_ENTRY' })
    expect(signatures()[0]?.after.entries).toBe(0)
  })
})

describe('a second person at a step', () => {
  const weigh = (more: Partial<Extract<Intention, { do: 'weigh' }>> = {}): Extract<Intention, { do: 'weigh' }> => ({
    do: 'weigh',
    step: 'c-preservative',
    reading: { mode: 're-tare', readingUg: grams('5') },
    checkedBy: 'person-mo',
    ...more,
  })
  const decided = (intention: Intention, withPin: readonly string[]) =>
    decide(bench.state, intention, {
      nowMs: bench.nowMs,
      by: bench.by,
      newId: countingIds().next,
      signsWithPin: (person) => withPin.includes(person),
    })

  beforeEach(() => runUpTo(bench, 'c-preservative'))

  test('[E83] who has a PIN signs; what is to be signed comes back with the refusal', () => {
    expect(decided(weigh(), ['person-mo'])).toEqual({
      ok: false,
      refusal: { code: 'SIGNATURE_MISSING', intention: weigh() },
    })
    expect(decided(weigh(), ['person-rk']).ok).toBe(true)
    expect(decided(weigh({ signature: mo }), ['person-mo']).ok).toBe(true)
  })

  test('[E83] the signature stands right behind the entry that was looked at, and names it', () => {
    const [weighed, signed] = bench.intend(weigh({ signature: mo }))
    expect(signed?.body).toEqual({ ...mo, step: 'c-preservative', entry: weighed?.id, head: weighed?.hash })
    expect(signatures()).toMatchObject([{ looked: { step: 'c-preservative', struck: false }, after: { entries: 0 } }])
    bench.strike(weighed?.id ?? '')
    expect(signatures()).toMatchObject([{ looked: { struck: true } }])
  })

  test('[E83] a signature of somebody else than who checks is none', () => {
    expect(bench.refusal(weigh({ signature: { ...mo, person: 'person-jt' } }))).toEqual({ code: 'SIGNATURE_BAD' })
    expect(bench.refusal(weigh({ checkedBy: 'person-rk', signature: { ...mo, person: 'person-rk' } }))).toEqual({
      code: 'SAME_PERSON',
    })
  })
})
