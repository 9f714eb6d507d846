import { type Forecast, forecastOf } from '../../src/batch/forecast'
import type { BatchHeader } from '../../src/batch/header'
import type { PlannedStep } from '../../src/batch/plan'
import { studentQuantile } from '../../src/trade/quantile'
import { openTestBench, type TestBench } from './batch'
import { lotionHeader, withSteps } from './formulas'
import { runUpTo } from './run'

/** Formula 1, cooled in air, where the room was not told at Start. */
export const inAir = (): BatchHeader => {
  const { ambientC: _untold, ...header } = withSteps(lotionHeader(), (step) =>
    step.kind === 'cool' ? { ...step, by: 'air' } : step,
  )
  return header
}

export const at = (stop: string, header: BatchHeader = lotionHeader()): TestBench => {
  const bench = openTestBench(header)
  runUpTo(bench, stop)
  return bench
}

export const planned = (bench: TestBench, id: string): PlannedStep => {
  const step = bench.state.plan.byId.get(id)
  if (!step) throw new Error(`no step ${id}`)
  return step
}

export const forecast = (bench: TestBench, id: string): Forecast => {
  const told = forecastOf(bench.state, planned(bench, id), studentQuantile)
  if (told === null) throw new Error(`${id} neither heats nor cools`)
  return told
}

export const readings = (bench: TestBench, step: string, pairs: readonly (readonly [number, number])[]): void => {
  let last = 0
  for (const [minute, temperatureC] of pairs) {
    bench.wait(minute - last)
    last = minute
    bench.intend({ do: 'read-temperature', vessel: planned(bench, step).step.vessel, temperatureC, step })
  }
}

export const cooling = [
  [0, 72.4],
  [4, 66.9],
  [8, 62.9],
  [13, 57.2],
  [18, 53.4],
  [24, 48.1],
] as const
