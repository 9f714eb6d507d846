import type { Balance } from '../../batch/catalogue'
import type { Choice } from './choice'
import type { House } from './house'
import { balanceCheckOf, meterCheckOf } from './instruments'
import type { SetUp } from './set-up'

/** What to wear for all the materials of a batch, each once. */
export function wearOf({ header }: SetUp): readonly string[] {
  return [...new Set(header.materials.flatMap(({ hazards }) => hazards?.wear ?? []))]
}

/** The balances that this batch is weighed on. */
export const balancesInUse = ({ header }: SetUp, { balances }: House): readonly Balance[] =>
  balances.filter(({ id }) => header.balanceOfLine.some(({ balance }) => balance === id))

export const needsMeter = ({ revision }: SetUp): boolean =>
  revision.specification.some(({ property }) => property === 'pH')

/** How many of the checks are made: the list, the balances in use, the meter where pH is read, the bell. */
export function checksDone(choice: Choice, setUp: SetUp, house: House): { readonly done: number; readonly of: number } {
  const readings = [
    ...balancesInUse(setUp, house).map((balance) => balanceCheckOf(balance, choice)),
    ...(needsMeter(setUp) ? [meterCheckOf(choice)] : []),
  ]
  const made = readings.filter((reading) => reading !== null && 'check' in reading).length
  const listed = setUp.revision.preflight.filter((text) => choice.list.includes(text)).length
  return {
    done: made + listed + (choice.alarm === null ? 0 : 1),
    of: readings.length + setUp.revision.preflight.length + 1,
  }
}
