import { expect, test } from 'vitest'
import type { RemedyLine, RemedyProblem } from '../../../src/trade/remedy'
import { verifyRemedy } from '../../../src/trade/remedy-check'
import { withinAllLimits } from '../../../src/trade/remedy-coupled'
import type { Coupling } from '../../../src/trade/remedy-model'

/** Instances that random search found: on each the solver once gave up. */
const line = (
  id: string,
  fraction: number,
  [low, high, tolerance]: readonly [number, number, number],
  massUg: number,
  more: Partial<RemedyLine> = {},
): RemedyLine => ({
  id,
  fraction,
  low,
  high,
  tolerance,
  massUg,
  locked: false,
  stockUg: null,
  costPerKg: 0.01,
  ...more,
})

const share = (id: string, high: number, parts: Readonly<Record<string, number>>): Coupling => ({
  kind: 'share',
  id,
  low: 0,
  high,
  parts: Object.entries(parts).map(([each, of]) => ({ line: each, share: of })),
})

const batch = (lines: readonly RemedyLine[], capacityUg: number, couplings: readonly Coupling[]): RemedyProblem => ({
  totalUg: 50_000_000,
  capacityUg,
  qsIndex: 0,
  lines,
  couplings,
})
const locked = { locked: true }

test('[R20] bands of very different width are no obstacle to an answer within a shared limit', async () => {
  const problem = batch(
    [
      line('0', 0.627, [0.61446, 0.63954, 0.01254], 0),
      line('1', 0.09474011774600505, [0.09284531539108494, 0.09663492010092516, 0.001894802354920101], 0),
      line(
        '2',
        0.12077796467619847,
        [0.11836240538267451, 0.12319352396972244, 0.0024155592935239697],
        5_950_000,
        locked,
      ),
      line('3', 0.11387636669470143, [0.08996232968881414, 0.13779040370058873, 0.0239140370058873], 0),
      line('4', 0.006274179983179142, [0.0060232127838519755, 0.006525147182506308, 0.00025096719932716566], 310_000, {
        locked: true,
      }),
      line('5', 0.031057190916736754, [0.02639861227922624, 0.03571576955424727, 0.004658578637510513], 0, {
        stockUg: 1_397_574,
      }),
      line('6', 0.006274179983179142, [0.006148696383515559, 0.0063996635828427245, 0.00012548359966358283], 0, {
        stockUg: 282_338,
      }),
    ],
    50_000_000,
    [share('limit', 0.6309514701429774, { '0': 1, '2': 0.1, '3': 0.1 })],
  )
  const answer = await withinAllLimits(problem, 'least-departure')
  if (!answer.feasible) throw new Error(answer.why.code)
  expect(verifyRemedy(problem, answer.additionsUg).filter(({ limit }) => limit === 'shared')).toEqual([])
})

test('[R18] of shared limits that cannot be kept one that is to blame is named', async () => {
  const problem = batch(
    [
      line('0', 0.3, [0.285, 0.315, 0.015], 15_020_000, locked),
      line('1', 0.0577127659574468, [0.056558510638297865, 0.05886702127659574, 0.001154255319148936], 0),
      line('2', 0.2078900709219858, [0.16215425531914893, 0.25362588652482265, 0.04573581560283688], 0),
      line('3', 0.19671985815602835, [0.19278546099290778, 0.20065425531914893, 0.0039343971631205675], 9_880_000, {
        locked: true,
      }),
      line(
        '4',
        0.1154255319148936,
        [0.10734574468085105, 0.12350531914893616, 0.008079787234042552],
        5_710_000,
        locked,
      ),
      line('5', 0.12225177304964537, [0.08679875886524821, 0.15770478723404252, 0.035453014184397155], 0, locked),
    ],
    52_500_000,
    [
      share('all', 0.7413540957446807, { '0': 1, '2': 0.84, '3': 0.84, '1': 0.84 }),
      share('first', 0.2965981382978723, { '0': 1, '1': 0.1 }),
      share('second', 0.08508138297872339, { '1': 1, '0': 0.1 }),
    ],
  )
  expect(await withinAllLimits(problem, 'least-departure')).toMatchObject({
    feasible: false,
    why: { code: 'SHARED_LIMITS_CONFLICT', ids: ['first'] },
  })
})
