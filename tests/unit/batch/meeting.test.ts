import { describe, expect, test } from 'vitest'
import { missedMeetings } from '../../../src/batch/meeting'
import type { StepKind } from '../../../src/batch/step'
import { studentQuantile } from '../../../src/trade/quantile'
import type { TestBench } from '../../support/batch'
import { benchWith, own, passAll } from '../../support/few-steps'
import { planned } from '../../support/thermal-bench'

const combine = (asked: { maxDifferenceC?: number; bothAtLeastC?: number }): StepKind => ({
  kind: 'combine',
  from: 'oil',
  ...asked,
})

const missed = (bench: TestBench) => missedMeetings(bench.state, planned(bench, own), bench.nowMs, studentQuantile)

/** Both stay where they were read. */
function staying(mainC: number, oilC: number, asked: { maxDifferenceC?: number; bothAtLeastC?: number }) {
  const bench = benchWith(combine(asked))
  bench.read('main', mainC)
  bench.read('oil', oilC)
  return { bench, found: missed(bench) }
}

/** The main beaker falls from 90 °C in a room of 21 °C, by a hundredth of what is left each minute; the oil stays. */
function falling(oilC: number, bothAtLeastC?: number) {
  const bench = benchWith(combine({ maxDifferenceC: 5, ...(bothAtLeastC === undefined ? {} : { bothAtLeastC }) }))
  bench.intend({ do: 'tell-surroundings', about: { of: 'room', temperatureC: 21 } })
  bench.read('oil', oilC)
  for (const temperatureC of [90, 86.6, 83.4]) {
    bench.read('main', temperatureC)
    bench.wait(5)
  }
  return missed(bench)
}

describe('[L67] two phases that go together', () => {
  test('are told where they will be too far apart, with both temperatures and by how much', () => {
    const { bench, found } = staying(76, 70, { maxDifferenceC: 5 })
    expect(found).toEqual([
      {
        step: own,
        atMs: bench.nowMs,
        into: { vessel: 'main', temperatureC: 76 },
        from: { vessel: 'oil', temperatureC: 70 },
        differenceC: 6,
        mostC: 5,
      },
    ])
    expect(staying(70, 76, { maxDifferenceC: 5 }).found).toMatchObject([{ differenceC: 6 }])
  })

  test('are not told where they are near enough, nor where no nearness is asked for', () => {
    expect(staying(75, 70, { maxDifferenceC: 5 }).found).toEqual([])
    expect(staying(75, 40, {}).found).toEqual([])
    expect(staying(50, 50, { maxDifferenceC: 5, bothAtLeastC: 70 }).found).toEqual([])
  })

  test('are not told where one of them was never read, nor once they are together', () => {
    const bench = benchWith(combine({ maxDifferenceC: 5 }))
    bench.read('main', 76)
    expect(missed(bench)).toEqual([])
    bench.read('oil', 60)
    expect(missed(bench)).toHaveLength(1)
    passAll(bench, 'begin')
    bench.combine(own)
    expect(missed(bench)).toEqual([])
  })

  test('are waited for, an hour at the most, while the hotter one falls to the other', () => {
    // 83.4 °C now, 74 °C some sixteen minutes on, 55 °C after the hour.
    expect(falling(69)).toEqual([])
    expect(falling(52)).toEqual([])
    expect(falling(44)).toMatchObject([{ from: { temperatureC: 44 } }])
  })

  test('must still be hot enough by then, to a degree', () => {
    expect(falling(69, 70)).toEqual([])
    expect(falling(68.9, 70)).toMatchObject([{ into: { vessel: 'main' }, from: { vessel: 'oil', temperatureC: 68.9 } }])
  })
})
