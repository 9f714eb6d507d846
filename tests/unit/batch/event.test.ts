import { describe, expect, test } from 'vitest'
import { type Event, inFoldOrder } from '../../../src/batch/event'
import { hashOf, isIntact, seal } from '../../../src/batch/seal'
import { advance, emptyTip, tipOf } from '../../../src/batch/tip'
import { openTestBench } from '../../support/batch'
import { lotionHeader } from '../../support/formulas'
import { runUpTo } from '../../support/run'

const by = { stream: 'batch:one', replica: 'tablet', id: 'id-1', at: '2026-11-24T10:00:00.000Z', by: 'person-rk' }

/** Every event that differs from the given one in one place: a string, number, flag, key or list entry. */
function* tampered(value: unknown): Generator<unknown> {
  if (typeof value === 'string') {
    yield `${value} `
    yield value === '' ? 'x' : value.slice(0, -1)
    for (let at = 0; at < Math.min(value.length, 8); at += 1)
      yield `${value.slice(0, at)}${value[at] === 'q' ? 'r' : 'q'}${value.slice(at + 1)}`
  } else if (typeof value === 'number') {
    yield value + 1
    yield -value - 0.5
  } else if (typeof value === 'boolean') {
    yield !value
  } else if (Array.isArray(value)) {
    yield [...value, 'more']
    for (const [at, each] of value.entries()) {
      yield value.filter((_, other) => other !== at)
      for (const changed of tampered(each)) yield value.with(at, changed)
    }
  } else if (typeof value === 'object' && value !== null) {
    yield { ...value, added: 1 }
    for (const [key, each] of Object.entries(value)) {
      const { [key]: _gone, ...rest } = value as Record<string, unknown>
      yield rest
      for (const changed of tampered(each)) yield { ...value, [key]: changed }
    }
  }
}

function everyKind(): readonly Event[] {
  const bench = openTestBench(lotionHeader())
  const mistyped = bench.weigh('a-phytate', '1')
  bench.strike(mistyped)
  bench.pass('a-hydrate', 'ORDER')
  bench.intend({ do: 'note', text: 'Überprüft: 75 °C — “gut”' })
  bench.intend({ do: 'add-unplanned', name: 'Salt', vessel: 'main', netUg: 1000, reason: 'thin' })
  bench.intend({ do: 'spill', vessel: 'main', massUg: 10, reason: 'knocked' })
  bench.intend({ do: 'park', reason: 'lunch' })
  bench.intend({ do: 'resume' })
  bench.intend({ do: 'hand-over', to: 'person-mo' })
  bench.weigh('b-emulsifier', '18.62')
  bench.settle('scale')
  runUpTo(bench)
  bench.intend({ do: 'close', decision: 'accept' })
  bench.intend({
    do: 'rework',
    reason: 'thin',
    steps: [{ kind: 'mix', vessel: 'main', tool: 'propeller', minutes: 5 }],
  })
  const kinds = new Map(bench.events.map((event) => [event.kind, event]))
  return [...kinds.values()]
}

describe('an entry and its hash', () => {
  test('[E1] tampering with any field of any kind of entry is seen', () => {
    const events = everyKind()
    expect(events.length).toBeGreaterThan(20)
    for (const event of events) {
      expect(isIntact(event), event.kind).toBe(true)
      // The opening entry carries a whole formula; its own fields and a part of its body stand for the rest.
      const bounded = [...(event.kind === 'opened' ? tampered({ ...event, body: null }) : tampered(event))]
      for (const changed of bounded) expect(isIntact(changed as Event), JSON.stringify(changed)).toBe(false)
    }
  })

  test('[E1] every byte of a weighing counts', () => {
    const event = everyKind().find((each) => each.kind === 'weighed')
    if (!event) throw new Error('nothing weighed')
    const text = JSON.stringify(event)
    for (let at = 0; at < text.length; at += 1) {
      const digit = text[at] === '7' ? '8' : '7'
      let changed: Event
      try {
        changed = JSON.parse(`${text.slice(0, at)}${digit}${text.slice(at + 1)}`)
      } catch {
        continue
      }
      expect(isIntact(changed), `byte ${at}`).toBe(false)
    }
  })

  test('[E1] a header inside the opening entry cannot be changed unseen', () => {
    const [opened] = openTestBench(lotionHeader()).events
    if (!opened) throw new Error('not opened')
    const body = structuredClone(opened.body) as ReturnType<typeof lotionHeader>
    expect(isIntact({ ...opened, body })).toBe(true)
    expect(isIntact({ ...opened, body: { ...body, sizeUg: body.sizeUg + 1 } })).toBe(false)
    const lots = body.lots.map((each, index) => (index === 3 ? { ...each, lots: [] } : each))
    expect(isIntact({ ...opened, body: { ...body, lots } })).toBe(false)
  })

  test('[E1] the hash does not depend on the order of keys, nor on the way through JSON', () => {
    const event = seal({ kind: 'noted', body: { text: 'ä €', step: 'a-water' } }, emptyTip, by)
    const turned = Object.fromEntries(Object.entries({ ...event, body: { step: 'a-water', text: 'ä €' } }).reverse())
    expect(hashOf(turned as unknown as Event)).toBe(event.hash)
    expect(isIntact(JSON.parse(JSON.stringify(event)))).toBe(true)
  })

  test('[E1] an entry names the one before it, and counts on from it', () => {
    const first = seal({ kind: 'noted', body: { text: 'one' } }, emptyTip, by)
    const tip = advance(emptyTip, first)
    const second = seal({ kind: 'noted', body: { text: 'two' } }, tip, { ...by, id: 'id-2' })
    expect(first).toMatchObject({ n: 0, lamport: 1, parents: [] })
    expect(second).toMatchObject({ n: 1, lamport: 2, parents: [first.hash] })
    expect(tipOf([first, second], 'tablet')).toEqual(advance(tip, second))
    expect(tipOf([first, second], 'other tablet')).toEqual({ next: 0, lamport: 2, hash: second.hash })
  })

  test('[E2] fold order is by lamport, then replica, then number', () => {
    const at = (lamport: number, replica: string, n: number): Event => ({
      ...seal({ kind: 'noted', body: {} }, emptyTip, by),
      lamport,
      replica,
      n,
    })
    const sorted = [at(2, 'b', 0), at(1, 'z', 5), at(2, 'a', 9), at(2, 'b', 1), at(1, 'a', 7)].sort(inFoldOrder)
    expect(sorted.map((event) => `${event.lamport}${event.replica}${event.n}`)).toEqual([
      '1a7',
      '1z5',
      '2a9',
      '2b0',
      '2b1',
    ])
  })
})
