import type { BatchHeader } from '../../src/batch/header'
import type { Intention, ReworkStep } from '../../src/batch/intention'
import { nextStep } from '../../src/batch/progress'
import { inSink } from '../../src/trade/ledger'
import { grams, openTestBench, type TestBench } from './batch'
import { formulas, headerFor } from './formulas'
import { doStep, runUpTo } from './run'

/** A batch that was made to the letter, filled, and closed on hold. */
export function closedBench(header: BatchHeader, stop?: string): TestBench {
  const bench = openTestBench(header)
  runUpTo(bench, stop)
  bench.intend({ do: 'close', decision: 'hold', note: 'checks to come' })
  return bench
}

/** Opened again with all that was filled but `keptUg` emptied back into a vessel; gives the ids of its steps. */
export function openRework(
  bench: TestBench,
  steps: readonly ReworkStep[],
  { vessel = 'main', keptUg = 0 }: { vessel?: string; keptUg?: number } = {},
): readonly string[] {
  const massUg = inSink(bench.state.ledger, 'filled') - keptUg
  const intention: Intention = { do: 'rework', reason: 'too thin', returned: { vessel, massUg }, steps }
  bench.intend(intention)
  return bench.state.parts.at(-1)?.steps ?? []
}

/** Does what is next until nothing is, all on target and at the temperature of the room. */
export function runOut(bench: TestBench): void {
  for (let next = nextStep(bench.state); next !== null; next = nextStep(bench.state)) {
    bench.read('main', 21)
    doStep(bench, next.id)
  }
}

/** A lotion that was closed before its checks after the rest. */
export const lotionClosed = (): TestBench => closedBench(headerFor(formulas.lotion), 'ph-next-day')

type Addition = Extract<ReworkStep, { kind: 'add' }>

export const gum: Addition = {
  kind: 'add',
  vessel: 'main',
  line: 'sclerotium-gum',
  name: 'Sclerotium gum',
  massUg: grams('1.5'),
}
export const water: Addition = { kind: 'add', vessel: 'main', line: 'aqua', name: 'Water', massUg: grams('20') }
export const preservative: Addition = {
  kind: 'add',
  vessel: 'main',
  line: 'phenoxyethanol-ehg',
  name: 'Preservative',
  massUg: grams('0.4'),
}
