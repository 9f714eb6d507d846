import { makeUpOf } from '../../../src/batch/make-up.ts'
import { roundToStep } from '../../../src/trade/mass.ts'
import { massOf, phReading, readAlong, startTimer, stopTimer, tipIn, weigh, weighChecked } from './acts.ts'
import type { Bench } from './bench.ts'
import { g } from './mass.ts'

/** What happened in one batch and not in the others, by the step that it took the place of. */
export type Mishaps = Readonly<Record<string, (bench: Bench) => void>>

/** Weighs the steps in turn, or does what went wrong instead. */
export function weighAll(bench: Bench, steps: readonly string[], mishaps: Mishaps = {}): void {
  for (const step of steps) {
    const mishap = mishaps[step]
    if (mishap) mishap(bench)
    else if (bench.state.plan.byId.get(step)?.step.secondPerson) weighChecked(bench, step)
    else weigh(bench, step)
  }
}

export const waterLines = ['a-water', 'a-phytate', 'a-propanediol', 'a-gum'] as const
export const oilLines = ['b-triglyceride', 'b-squalane', 'b-shea', 'b-emulsifier', 'b-cetearyl'] as const

/** The whole making of formula 1, from the first weighing to the clean beaker: about two and a half hours. */
export function makeLotion(bench: Bench, mishaps: Mishaps): void {
  weighAll(bench, waterLines, mishaps)
  tipIn(bench, 'a-slurry-in', g(4))
  startTimer(bench, 'a-hydrate', 'Hydrate the gum', 20)
  weighAll(bench, oilLines, mishaps)
  if (mishaps['a-hydrate']) mishaps['a-hydrate'](bench)
  else stopTimer(bench, 'a-hydrate', { saw: 'smooth, no lumps' })
  weigh(bench, 'a-oat')
  heatAndCombine(bench)
  coolDown(bench, mishaps)
  adjustPh(bench)
  makeUp(bench)
  putAway(bench)
}

function heatAndCombine(bench: Bench): void {
  bench.intend({ do: 'start-step', step: 'a-heat' })
  bench.intend({ do: 'start-step', step: 'b-melt' })
  readAlong(bench, 'main', [31.4, 46.8, 58.9, 67.5, 73.1], 4)
  readAlong(bench, 'oil', [66.2, 75.4], 2)
  readAlong(bench, 'main', [75.3], 3)
  startTimer(bench, 'a-heat', 'Hold A at 75 °C', 10)
  bench.wait(1)
  bench.intend({ do: 'finish-step', step: 'b-melt', saw: 'clear, all melted' })
  stopTimer(bench, 'a-heat', {})
  readAlong(bench, 'main', [75.6], 0.8)
  readAlong(bench, 'oil', [74.9], 0.6)
  bench.wait(1.5)
  const residueUg = roundToStep(Math.round(bench.noise.between(0.35, 0.9) * g(1)), g(0.01))
  bench.intend({ do: 'combine', step: 'b-into-a', residueUg, rinseUg: 0 })
  startTimer(bench, 'b-homogenise', 'Homogenise', 3)
  stopTimer(bench, 'b-homogenise', { toolRpm: bench.noise.whole(38, 42) * 100 })
}

function coolDown(bench: Bench, mishaps: Mishaps): void {
  bench.intend({ do: 'start-step', step: 'c-cool' })
  readAlong(bench, 'main', [69.8, 60.3], 4)
  weighAll(bench, ['c-preservative', 'c-panthenol', 'c-tocopherol'], mishaps)
  readAlong(bench, 'main', [47.1, 42.2, 39.2], 6)
  bench.intend({ do: 'finish-step', step: 'c-cool' })
  tipIn(bench, 'c-in', g(2))
  startTimer(bench, 'c-mix', 'Stir C in', 5)
  stopTimer(bench, 'c-mix', { toolRpm: bench.noise.whole(18, 21) * 10 })
}

/** Lactic acid in portions until the window is met; the batch takes about 0.42 g for each tenth of a pH. */
function adjustPh(bench: Bench): void {
  const perGram = bench.noise.between(0.46, 0.52)
  const stepUg = g(0.001)
  let ph = bench.noise.between(6.18, 6.36)
  bench.intend({ do: 'start-step', step: 'adjust-ph' })
  readAlong(bench, 'main', [29.4], 6)
  phReading(bench, ph, { step: 'adjust-ph', check: 'ph', label: 'pH' })
  while (ph > 5.2) {
    const grams = Math.min(0.8, (ph - 5.08) / perGram) * bench.noise.between(0.94, 1)
    bench.wait(1)
    bench.intend({ do: 'adjust', step: 'adjust-ph', netUg: roundToStep(Math.round(g(grams)), stepUg) })
    ph -= grams * perGram
    bench.wait(2)
    phReading(bench, ph, { step: 'adjust-ph', check: 'ph', label: 'pH' })
  }
  bench.intend({ do: 'finish-step', step: 'adjust-ph' })
}

function makeUp(bench: Bench): void {
  const { tareUg = 0 } = bench.state.vessels.get('main') ?? {}
  const lossUg = g(bench.noise.between(5.5, 9.5))
  const grossUg = roundToStep(tareUg + massOf(bench, 'main') - lossUg, g(0.01))
  const { toAddUg } = makeUpOf(bench.state, 'main', 'aqua', grossUg)
  const [lot] = bench.state.lotsOfLine.get('aqua') ?? []
  bench.wait(2)
  bench.intend({
    do: 'make-up',
    step: 'make-up',
    grossUg,
    netUg: roundToStep(toAddUg, g(0.01)),
    ...(lot === undefined ? {} : { lot }),
  })
  bench.wait(4)
  phReading(bench, bench.noise.between(5.06, 5.16), { step: 'read-ph', check: 'ph-made-up', label: 'pH after make-up' })
}

function putAway(bench: Bench): void {
  bench.wait(3)
  const sampledUg = roundToStep(Math.round(g(90 + bench.noise.bell() * 0.3)), g(0.01))
  bench.intend({
    do: 'sample',
    step: 'sample',
    vessel: 'main',
    massUg: sampledUg,
    jars: 3,
    purpose: 'rested checks, and jars at 25 °C and 40 °C',
  })
  bench.wait(12)
  const leftUg = g(bench.noise.between(1.1, 3.4))
  const filledUg = roundToStep(massOf(bench, 'main') - leftUg, g(0.01))
  bench.intend({ do: 'fill', step: 'fill', vessel: 'main', massUg: filledUg, units: 4 })
  bench.wait(14)
  bench.intend({ do: 'finish-step', step: 'clean' })
}
