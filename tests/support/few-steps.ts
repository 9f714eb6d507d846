import { gatesOf } from '../../src/batch/gates'
import type { Step, StepKind } from '../../src/batch/step'
import { openTestBench, type TestBench } from './batch'
import { lotionHeader, withSteps } from './formulas'

/** The id of the one step that a batch of few steps is about. */
export const own = 'own'

const inMain = (kind: StepKind): Step => ({ id: own, vessel: 'main', phase: 'A', title: 'Own', ...kind })

/** The lotion cut down to its water, its squalane and one step of that kind in the main beaker, both weighed. */
export function benchWith(kind: StepKind): TestBench {
  const header = withSteps(lotionHeader(), (step) => {
    if (step.id === 'a-water') return step
    return step.id === 'b-squalane' ? [step, inMain(kind)] : []
  })
  const bench = openTestBench(header)
  for (const id of ['a-water', 'b-squalane']) {
    bench.wait(1)
    bench.weigh(id, String((bench.step(id).targets.at(-1) ?? 0) / 1e6))
  }
  bench.wait(1)
  return bench
}

/** Passes whatever gates stand in its way, with a reason. */
export function passAll(bench: TestBench, moment: 'begin' | 'finish' = 'finish'): void {
  for (const { key } of gatesOf(bench.state, own, bench.nowMs, moment)) bench.pass(own, key)
}

/** Its timer runs for so long, whatever was asked for. */
export function runFor(bench: TestBench, minutes: number): void {
  const timer = bench.timer(own, 20)
  bench.wait(minutes)
  bench.intend({ do: 'acknowledge-timer', timer })
}
