import { describe, expect, test } from 'vitest'
import { gatesOf } from '../../../src/batch/gates'
import type { BatchHeader } from '../../../src/batch/header'
import { openTestBench } from '../../support/batch'
import { lotionHeader, withSteps } from '../../support/formulas'

/** The C cup goes into the main beaker at once; two of its lines bear this much, °C. */
function cupOf(panthenolC: number | undefined, tocopherolC: number | undefined): BatchHeader {
  const header = withSteps(lotionHeader(), (step) =>
    step.id.startsWith('c-') && step.kind !== 'cool' && step.kind !== 'mix' ? step : step.id === 'a-water' ? step : [],
  )
  const bears = new Map([
    ['panthenol-75', panthenolC],
    ['tocopherol', tocopherolC],
  ])
  const materials = header.materials.map(({ maxTemperatureC: _own, ...each }) => {
    const maxTemperatureC = bears.get(each.id)
    return { ...each, ...(maxTemperatureC === undefined ? {} : { maxTemperatureC }) }
  })
  return { ...header, materials }
}

function gatesAt(header: BatchHeader, mainC: number | null) {
  const bench = openTestBench(header)
  for (const id of ['a-water', 'c-panthenol', 'c-preservative', 'c-tocopherol'])
    bench.weigh(id, String((bench.step(id).targets.at(-1) ?? 0) / 1e6))
  if (mainC !== null) bench.read('main', mainC)
  return gatesOf(bench.state, 'c-in', bench.nowMs).map((gate) =>
    gate.code === 'TOO_HOT' ? [gate.material, gate.limitC, gate.lastC] : gate.code,
  )
}

describe('[G2] a cup of several lines', () => {
  test('waits for the one that bears least, whichever it is', () => {
    expect(gatesAt(cupOf(40, 60), 65)).toEqual([['Panthenol 75 %', 40, 65]])
    expect(gatesAt(cupOf(60, 40), 65)).toEqual([['Tocopherol', 40, 65]])
    expect(gatesAt(cupOf(60, 40), 50)).toEqual([['Tocopherol', 40, 50]])
    expect(gatesAt(cupOf(undefined, 40), 50)).toEqual([['Tocopherol', 40, 50]])
  })

  test('waits for nothing where the vessel is cool enough, was never hot, or no line minds', () => {
    expect(gatesAt(cupOf(60, 40), 40)).toEqual([])
    expect(gatesAt(cupOf(60, 40), null)).toEqual([])
    expect(gatesAt(cupOf(undefined, undefined), 90)).toEqual([])
  })
})
