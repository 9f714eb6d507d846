import { describe, expect, it } from 'vitest'
import { accented, fileOf, holding, many, shelf } from './shelves.ts'
import { write } from './support.ts'

const a = write('batch:a', 4)
const lot = write('lot:l', 2)

describe('a bad or broken-off file', () => {
  it('[I73] that was cut says how many entries are sound, wherever the cut is', async () => {
    const text = await (await fileOf(holding(a.events, lot.events).archive)).text()
    const first = text.indexOf('\n') + 1
    for (let end = first; end < text.length - 1; end += 41) {
      const found = text.slice(first, end).split('\n').length - 1
      const answer = await holding().archive.inspect(new Blob([text.slice(0, end)]))
      const whole = text.slice(first, end).endsWith('}')
      expect(answer, `cut at ${end}`).toEqual({
        ok: false,
        refusal: { code: 'FILE_CUT', expected: 6, found: whole ? found + 1 : found },
      })
    }
  })

  it('[I73] that was cut in the middle of a letter is cut, not damaged', async () => {
    const bytes = new TextEncoder().encode(await (await fileOf(holding(accented()).archive)).text())
    const inside = bytes.indexOf(0xc3) + 1
    const answer = await holding().archive.inspect(new Blob([bytes.slice(0, inside)]))
    expect(answer).toMatchObject({ ok: false, refusal: { code: 'FILE_CUT', found: 0 } })
  })

  it('[I73] with one byte changed is refused, and an entry says its line', async () => {
    const bytes = new TextEncoder().encode(await (await fileOf(holding(a.events).archive)).text())
    const ends = [...bytes.entries()].filter(([, byte]) => byte === 0x0a).map(([at]) => at)
    for (let at = 0; at < bytes.length - 1; at += 7) {
      const changed = bytes.slice()
      changed[at] = changed[at] === 0x33 ? 0x34 : 0x33
      const answer = await holding().archive.inspect(new Blob([changed]))
      expect(answer.ok, `byte ${at}`).toBe(false)
      const line = ends.filter((end) => end < at).length + 1
      if (line > 1 && !ends.includes(at)) expect(answer, `byte ${at}`).toMatchObject({ refusal: { line } })
    }
  })

  it('[I73] that says the same in other letters is refused at that line', async () => {
    const text = await (await fileOf(holding(accented()).archive)).text()
    const answer = await holding().archive.inspect(new Blob([text.replace('1e-7', '1E-7')]))
    expect(answer).toEqual({ ok: false, refusal: { code: 'FILE_DAMAGED', line: 2 } })
  })

  it('[I74] stopped half-way says how much is in, keeps it, and goes on from there', async () => {
    const file = await fileOf(holding(...many(1_100, 4)).archive)
    const there = holding()
    const stop = new AbortController()
    const onProgress = (fraction: number) => fraction > 0.9 && stop.abort()
    const stopped = await there.archive.apply(file, { signal: stop.signal, onProgress })
    if (stopped.ok || stopped.refusal.code !== 'STOPPED') throw new Error('it was not stopped')
    expect(stopped.refusal).toMatchObject({ cause: 'asked', of: 4_400 })
    expect(stopped.refusal.done).toBeGreaterThan(0)
    expect([...there.streams.values()].flat()).toHaveLength(stopped.refusal.done)
    expect(await there.archive.apply(file)).toMatchObject({ ok: true, value: { fresh: 4_400 - stopped.refusal.done } })
    expect([...there.streams.values()].flat()).toHaveLength(4_400)
  }, 60_000)

  it('[I74] that fills the storage says how much is in, and completes once there is room', async () => {
    const file = await fileOf(holding(...many(1_100, 4)).archive)
    const there = shelf(new Map(), 3_000)
    const answer = await there.archive.apply(file)
    expect(answer).toMatchObject({ ok: false, refusal: { code: 'STOPPED', cause: 'full', of: 4_400 } })
    there.seen.room = Number.POSITIVE_INFINITY
    await there.archive.apply(file)
    expect([...there.streams.values()].flat()).toHaveLength(4_400)
  }, 60_000)
})
