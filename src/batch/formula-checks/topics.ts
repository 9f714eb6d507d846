import type { CheckTopic, FormulaCheck } from './check'

/** The topics that nothing was said about, in a fixed order: these are in order. */
export function inOrder(checks: readonly FormulaCheck[]): readonly CheckTopic[] {
  const said = new Set(checks.map(({ code }) => topicOf[code]))
  return topics.filter((topic) => !said.has(topic))
}

const topics: readonly CheckTopic[] = [
  'total',
  'use levels',
  'shared limits',
  'preservation',
  'pH',
  'surfactants',
  'thickeners',
  'temperature',
  'weighing',
]

/** Null where a check tells a figure, or is of something that is never simply in order. */
const topicOf: Readonly<Record<FormulaCheck['code'], CheckTopic | null>> = {
  LINES_NONE: 'total',
  TOTAL_OFF: 'total',
  QS_NEGATIVE: 'total',
  QS_TWICE: 'total',
  QS_NONE: null,
  RANGE_CONTRADICTORY: 'use levels',
  RANGE_AGAINST_USE: 'use levels',
  RANGE_EXCLUDES: 'use levels',
  MATERIAL_UNKNOWN: 'use levels',
  USE_OVER: 'use levels',
  USE_UNDER: 'use levels',
  USE_MAY_PASS: 'use levels',
  SHARED_OVER: 'shared limits',
  SHARED_UNDER: 'shared limits',
  PRESERVATIVE_NONE: 'preservation',
  PRESERVATIVE_WEAK: 'preservation',
  PRESERVATIVE_STRONG: 'preservation',
  PRESERVATIVE_ABOVE_LAW: 'preservation',
  PRESERVATIVE_PH_OUT: 'preservation',
  PRESERVATIVE_PH_PARTLY: 'preservation',
  PH_OUT: 'pH',
  PH_PARTLY: 'pH',
  PH_NOT_STATED: 'pH',
  PH_NOT_READ_AGAIN: 'pH',
  ACTIVE_MATTER: null,
  ACTIVE_UNKNOWN: 'surfactants',
  ANIONIC_WITH_CATIONIC: 'surfactants',
  ANIONIC_WITH_CATIONIC_POLYMER: 'surfactants',
  ANIONIC_THICKENER_WITH_CATIONIC: 'surfactants',
  THICKENER_WITH_SALT: 'thickeners',
  CARBOMER_NOT_NEUTRALISED: 'thickeners',
  GUM_NOT_HYDRATED: 'thickeners',
  CARBOMER_BEFORE_PVP: 'thickeners',
  ENTERS_TOO_HOT: 'temperature',
  NEVER_COOLED: 'temperature',
  HEATED_ABOVE: 'temperature',
  TOO_SMALL_TO_WEIGH: 'weighing',
  TOO_MUCH_TO_WEIGH: 'weighing',
  BALANCES_NONE: 'weighing',
  HLB_GUIDE: null,
  HLB_APART: null,
  HLB_UNKNOWN: null,
  HAZARD: null,
  ALLERGENS_NAMED: null,
  ALLERGENS_UNKNOWN: null,
  COST: null,
  DATA_MISSING: null,
  INCI_NOT_WHOLE: null,
}
