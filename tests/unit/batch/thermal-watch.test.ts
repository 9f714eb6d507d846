import { describe, expect, test } from 'vitest'
import { celsiusMeant } from '../../../src/batch/fahrenheit'
import { missedMeetings } from '../../../src/batch/meeting'
import { overheatingOf } from '../../../src/batch/overheating'
import { waitingLines } from '../../../src/batch/waiting-lines'
import { studentQuantile } from '../../../src/trade/quantile'
import { openTestBench } from '../../support/batch'
import { lotionHeader } from '../../support/formulas'
import { at, planned } from '../../support/thermal-bench'

describe('what else the readings say', () => {
  test('[L67] two phases that go apart are told with both temperatures, and those that meet are not', () => {
    const bench = at('b-melt')
    bench.intend({ do: 'tell-surroundings', about: { of: 'room', temperatureC: 21 } })
    const both = (minute: number, mainC: number, oilC: number) => {
      bench.wait(minute)
      bench.read('main', mainC)
      bench.read('oil', oilC)
    }
    const missed = () => missedMeetings(bench.state, planned(bench, 'b-melt'), bench.nowMs, studentQuantile)
    both(0, 75, 22)
    expect(missed()).toEqual([])
    both(4, 70, 34)
    both(4, 65.6, 46)
    both(4, 61.6, 55)
    both(2, 59.8, 59)
    const [first] = missed()
    expect(first).toMatchObject({ step: 'b-into-a', mostC: 5, from: { vessel: 'oil', temperatureC: 75 } })
    expect(first?.into.temperatureC).toBeLessThan(60)
    expect(first?.differenceC).toBeGreaterThan(14)
    const kept = at('b-melt')
    for (const [minute, oilC] of [
      [0, 22],
      [4, 34],
      [4, 46],
      [4, 55],
      [2, 59],
    ] as const) {
      kept.wait(minute)
      kept.read('main', 75)
      kept.read('oil', oilC)
    }
    expect(missedMeetings(kept.state, planned(kept, 'b-melt'), kept.nowMs, studentQuantile)).toEqual([])
  })

  test('[L68] a phase over what its step heats to, and one over what a material in it stands, is told', () => {
    const bench = at('b-melt')
    bench.read('oil', 79)
    expect(overheatingOf(bench.state, planned(bench, 'b-melt'))).toBeNull()
    bench.read('oil', 81.5)
    expect(overheatingOf(bench.state, planned(bench, 'b-melt'))).toEqual({ of: 'step', lastC: 81.5, limitC: 75 })
    const late = at('c-mix')
    late.read('main', 48)
    expect(overheatingOf(late.state, planned(late, 'c-mix'))).toMatchObject({ of: 'material', lastC: 48 })
  })

  test('[L69] the lines that wait in cups are told with their mass and time, by this batch’s own pace', () => {
    const bench = at('c-cool')
    const waiting = waitingLines(bench.state, planned(bench, 'c-cool'))
    expect(waiting).toMatchObject({ phase: 'C', steps: ['c-panthenol', 'c-preservative', 'c-tocopherol'] })
    expect(waiting?.massUg).toBe(13_150_000)
    expect(waiting).toMatchObject({ minutes: 3, ownPace: true })
    for (const step of waiting?.steps ?? []) bench.weigh(step, String((bench.step(step).targets.at(-1) ?? 0) / 1e6))
    expect(waitingLines(bench.state, planned(bench, 'c-cool'))).toBeNull()
    expect(waitingLines(openTestBench(lotionHeader()).state, planned(bench, 'c-cool'))).toMatchObject({
      minutes: 4.5,
      ownPace: false,
    })
  })

  test('[G7] a figure off a °F thermometer is known by what it would be in °C', () => {
    expect(celsiusMeant(167, { kind: 'heating', targetC: 75 })).toBe(75)
    expect(celsiusMeant(122, { kind: 'heating', targetC: 75, lastC: 45 })).toBe(50)
    expect(celsiusMeant(104, { kind: 'cooling', targetC: 40, lastC: 48.1 })).toBe(40)
    expect(celsiusMeant(160, { kind: 'cooling', targetC: 40 })).toBe(71.1)
    for (const [typed, expected] of [
      [82, { kind: 'heating', targetC: 75 }],
      [72.4, { kind: 'cooling', targetC: 40 }],
      [95, { kind: 'heating', targetC: 75, lastC: 80 }],
      [46, { kind: 'cooling', targetC: 40, lastC: 48 }],
      [20, { kind: 'heating', targetC: 75 }],
    ] as const)
      expect(celsiusMeant(typed, expected)).toBeNull()
  })
})
