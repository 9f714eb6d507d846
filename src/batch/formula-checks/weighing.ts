import { relativeTolerance } from '../../trade/relative-tolerance'
import { smallestReliableMass } from '../../trade/reliability'
import type { FormulaCheck } from './check'
import type { Checked } from './lines'

const source = { kind: 'own data' } as const

/**
 * Each line at the size asked about, on the best of the studio's balances: the finest that carries it. Adjusters go in
 * by portions and q.s. takes what is left, so neither has a band to keep.
 */
export function weighingChecks({ lines, context, sizeUg }: Checked): readonly FormulaCheck[] {
  const balances = context.balances.filter(({ archived }) => archived !== true)
  if (balances.length === 0) return [{ code: 'BALANCES_NONE', severity: 'missing', source }]
  const largest = balances.reduce((most, each) => (each.capacityUg > most.capacityUg ? each : most))
  return lines.flatMap((line): FormulaCheck[] => {
    const targetUg = Math.round(line.share * sizeUg)
    if (line.line.amount.kind !== 'fraction' || targetUg <= 0) return []
    const tolerance = relativeTolerance(targetUg, line.line.tolerance)
    const best = balances
      .filter(({ capacityUg }) => capacityUg >= targetUg)
      .map((balance) => ({ balance, fromUg: smallestReliableMass(balance, tolerance, false).blocksBelow }))
      .reduce<Best | null>((least, each) => (least === null || each.fromUg < least.fromUg ? each : least), null)
    const about = { line: line.line.id, name: line.material.name, source }
    const figure = { value: targetUg, unit: 'mass' } as const
    if (best === null)
      return [
        {
          code: 'TOO_MUCH_TO_WEIGH',
          severity: 'note',
          balance: largest.name,
          figure,
          limit: { max: largest.capacityUg, unit: 'mass' },
          ...about,
        },
      ]
    if (targetUg >= best.fromUg) return []
    const limit = { min: Math.ceil(best.fromUg), unit: 'mass' } as const
    return [
      { code: 'TOO_SMALL_TO_WEIGH', severity: 'warn', balance: best.balance.name, tolerance, figure, limit, ...about },
    ]
  })
}

interface Best {
  readonly balance: { readonly name: string }
  readonly fromUg: number
}
