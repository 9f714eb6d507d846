import type { Material } from '../catalogue'
import type { Formula, Revision } from '../formula'
import { amountChecks } from './amounts'
import type { CheckContext, FormulaCheck, Severity } from './check'
import { dataChecks } from './data'
import { emulsionChecks } from './emulsion'
import { checkedOf } from './lines'
import { phChecks } from './ph'
import { procedureChecks } from './procedure'
import { rangeChecks } from './ranges'
import { safetyChecks } from './safety'
import { surfactantChecks } from './surfactants'
import { thickenerChecks } from './thickeners'
import { weighingChecks } from './weighing'

export type { Bounds, CheckContext, CheckSource, CheckTopic, Figure, FormulaCheck, Severity, Unit } from './check'
export { inOrder } from './topics'

/**
 * Everything that can be said about a revision before it is weighed, the gravest first, each group in the order of
 * the formula. What data does not allow to be said is said to be missing. Shares 0–1, masses µg, temperatures °C.
 */
export function checksOf(
  revision: Revision,
  { contact }: Pick<Formula, 'contact'>,
  materials: ReadonlyMap<string, Material>,
  context: CheckContext,
): readonly FormulaCheck[] {
  const checked = checkedOf(revision, contact, materials, context)
  return looks.flatMap((look) => look(checked)).sort((a, b) => order[a.severity] - order[b.severity])
}

const looks = [
  amountChecks,
  rangeChecks,
  phChecks,
  surfactantChecks,
  thickenerChecks,
  procedureChecks,
  weighingChecks,
  emulsionChecks,
  safetyChecks,
  dataChecks,
]

const order: Readonly<Record<Severity, number>> = { stop: 0, warn: 1, missing: 2, note: 3 }
