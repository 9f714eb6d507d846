import type { Bounds, CheckSource, CheckTopic, Figure, FormulaCheck, Severity, Unit } from '../../batch/formula-checks'
import type { Format } from '../format'

type Code = FormulaCheck['code']
type WithCode<C extends Code, F = FormulaCheck> = F extends { readonly code: infer K }
  ? C extends K
    ? F
    : never
  : never

/** What a check says: what it is, and what would mend it. Its figure and limit stand beside it. */
export function checkSentence(check: FormulaCheck, format: Format): string {
  // The table's type pairs each code with its own data; indexing by the union loses that pairing.
  const say = sentences[check.code] as (check: FormulaCheck, format: Format) => string
  return say(check, format)
}

const sentences: { readonly [C in Code]: (check: WithCode<C>, format: Format) => string } = {
  LINES_NONE: () => 'There is no line yet.',
  TOTAL_OFF: () => 'The lines do not come to 100 %. Make one of them the q.s. line, or change the others.',
  QS_NEGATIVE: () => 'The other lines leave nothing for the q.s. line. Take some off them.',
  QS_TWICE: () => 'More than one line is q.s. Only one can make up to 100 %.',
  QS_NONE: () => 'No line is q.s.: after a slip none can give way, and a lot of another assay changes the total.',
  RANGE_CONTRADICTORY: ({ name }) => `${name}: the least of its range is above its most.`,
  RANGE_AGAINST_USE: ({ name }) => `${name}: its range and its use level have nothing in common.`,
  RANGE_EXCLUDES: ({ name }) => `${name} is outside the range that this formula gives it.`,
  MATERIAL_UNKNOWN: ({ materialId }) => `The material "${materialId}" is not here, so its line is not checked.`,
  USE_OVER: ({ name }) => `${name} is above its use level.`,
  USE_UNDER: ({ name }) => `${name} is below its use level: it may do nothing.`,
  USE_MAY_PASS: ({ name }) => `${name} may go past its use level and still be in the range that this formula gives it.`,
  SHARED_OVER: ({ name }) => `${name}: all its lines together are above the limit.`,
  SHARED_UNDER: ({ name }) => `${name}: all its lines together are below the limit.`,
  PRESERVATIVE_NONE: () => 'There is water in it and nothing that preserves it.',
  PRESERVATIVE_WEAK: ({ name }) => `${name} is too little to preserve.`,
  PRESERVATIVE_STRONG: ({ name }) => `${name} is more than its use level allows.`,
  PRESERVATIVE_ABOVE_LAW: ({ inci, asAcid }) =>
    `${inci}${asAcid ? ', its salts counted as the acid,' : ''} is above what the European Union allows.`,
  PRESERVATIVE_PH_OUT: ({ name, wanted }, format) =>
    `${name} does not work at the pH asked for, ${boundsText(wanted, format)}. Lower the pH or choose another.`,
  PRESERVATIVE_PH_PARTLY: ({ name, wanted }, format) =>
    `${name} works in a part only of the pH asked for, ${boundsText(wanted, format)}. Narrow the specification.`,
  PH_OUT: ({ name, wanted }, format) =>
    `${name} is made for another pH than the one asked for, ${boundsText(wanted, format)}.`,
  PH_PARTLY: ({ name, wanted }, format) =>
    `The pH asked for, ${boundsText(wanted, format)}, reaches beyond what ${name} is made for.`,
  PH_NOT_STATED: ({ names }) =>
    `The specification asks for no pH, so ${listed(names)} cannot be held against ${one(names, 'its', 'their')} window.`,
  PH_NOT_READ_AGAIN: () =>
    'The batch is made up to weight after its pH is adjusted, and no step reads the pH after that. Add one.',
  ACTIVE_MATTER: ({ byClass }, format) =>
    `Active matter: ${byClass.map((each) => `${each.class} ${format.percent(each.share)}`).join(', ')}.`,
  ACTIVE_UNKNOWN: ({ names }) =>
    `The active matter of ${listed(names)} is not written down: the sum is without ${one(names, 'it', 'them')}.`,
  ANIONIC_WITH_CATIONIC: ({ anionic, cationic }) =>
    `${anionic} is anionic and ${cationic} cationic: together they fall out and do neither work.`,
  ANIONIC_WITH_CATIONIC_POLYMER: ({ anionic, cationic }) =>
    `${cationic} is a cationic polymer in anionic ${anionic}: it is meant to deposit on rinsing. Look for haze.`,
  ANIONIC_THICKENER_WITH_CATIONIC: ({ anionic, cationic }) =>
    `${anionic} carries a negative charge and ${cationic} a positive one: the thickener may fall out.`,
  THICKENER_WITH_SALT: ({ name, salts }) => `Salts thin ${name}: ${listed(salts)}.`,
  CARBOMER_NOT_NEUTRALISED: ({ name }) => `Nothing neutralises ${name}: it stays thin and sour.`,
  CARBOMER_BEFORE_PVP: ({ name, film }) =>
    `${film} meets ${name} before it is neutralised: they may fall out together.`,
  GUM_NOT_HYDRATED: ({ name }) => `No step gives ${name} time to hydrate. Add a hydrate step after it is in.`,
  ENTERS_TOO_HOT: ({ name }) => `${name} goes in hotter than it bears. Cool further first, or move its step.`,
  NEVER_COOLED: ({ name }) => `${name} goes in hot: a step heats the vessel and none cools it before. Add a cool step.`,
  HEATED_ABOVE: ({ name, title }) => `${name} is in the vessel when ${title}, heats it past what it bears.`,
  TOO_SMALL_TO_WEIGH: ({ name, balance, tolerance }, format) =>
    `${name} is too little for ${balance} to weigh to ±${format.percent(tolerance, tolerance < 0.01 ? 1 : 0)}. Make more, or pre-mix it.`,
  TOO_MUCH_TO_WEIGH: ({ name, balance }) => `${name} is more than ${balance} carries: it is weighed in loads.`,
  BALANCES_NONE: () => 'No balance is known here, so nothing can be said about small masses. Add one in Setup.',
  HLB_GUIDE: ({ known }, format) =>
    `The emulsifier suits the oil phase by its HLB${partOfOils(known, format)}. A guide only.`,
  HLB_APART: ({ known }, format) =>
    `The emulsifier is some way from what the oil phase asks for${partOfOils(known, format)}. A guide only: try it.`,
  HLB_UNKNOWN: ({ names }) =>
    `No HLB is written down for ${listed(names)}: the guide is without ${one(names, 'it', 'them')}.`,
  HAZARD: ({ name, caution, wear }) =>
    `${name}. ${caution.replace(/\.$/, '')}.${wear.length > 0 ? ` Wear: ${wear.join(', ')}.` : ''}`,
  ALLERGENS_NAMED: ({ allergens }, format) =>
    `To be named on the label: ${allergens.map(({ name, fraction }) => `${name} ${format.percent(fraction, 4)}`).join(', ')}.`,
  ALLERGENS_UNKNOWN: ({ name, allergens }) =>
    `How much ${listed(allergens)} is in ${name} is not written down. Name ${one(allergens, 'it', 'them')} unless the supplier's sheet says less.`,
  COST: ({ perBatch, perUnit, unpriced }, format) =>
    `Materials: ${format.number(perBatch, 2)} a batch${perUnit === undefined ? '' : `, ${format.number(perUnit, 2)} a unit`}${
      unpriced === 0 ? '' : `, without the ${unpriced} that have no price`
    }.`,
  DATA_MISSING: ({ what, names }) => `${missingWords[what]} ${listed(names)}.`,
  INCI_NOT_WHOLE: ({ name }) =>
    `The constituents of ${name} do not come to 100 %: the label draft may be in a wrong order.`,
}

const missingWords = {
  'use level': 'No use level is written down for',
  'INCI names': 'No INCI name is written down for',
  hazards: 'No hazards are written down for',
  price: 'No price is written down for',
  'pH window': 'No pH window is written down for',
} as const

/** "1.20 %", "75 °C", "0.05 g". */
export function figureText({ value, unit }: Figure, format: Format): string {
  return `${numberText(value, unit, format)}${unitText[unit]}`
}

/** "0.7–1.1 %", "at most 40 °C"; a single value where both ends are the same. */
export function boundsText({ min, max, unit }: Bounds, format: Format): string {
  const show = (value: number) => numberText(value, unit, format)
  if (min !== undefined && max !== undefined)
    return min === max ? `${show(min)}${unitText[unit]}` : `${show(min)}–${show(max)}${unitText[unit]}`
  return min === undefined ? `at most ${show(max ?? 0)}${unitText[unit]}` : `at least ${show(min)}${unitText[unit]}`
}

export function sourceText(source: CheckSource): string {
  switch (source.kind) {
    case 'standard':
      return source.name
    case 'textbook':
      return 'textbook'
    case 'first principles':
      return 'first principles'
    case 'own data':
      return 'your own data'
    case 'formula':
      return 'this formula'
  }
}

export const severityWords: Readonly<Record<Severity, string>> = {
  stop: 'cannot be weighed',
  warn: 'look again',
  missing: 'not known',
  note: 'worth knowing',
}

/** What each topic is called where it is in order. */
export const topicWords: Readonly<Record<CheckTopic, string>> = {
  total: 'the total',
  'use levels': 'use levels',
  'shared limits': 'limits over several lines',
  preservation: 'preservation',
  pH: 'pH windows',
  surfactants: 'charges',
  thickeners: 'thickeners',
  temperature: 'temperatures',
  weighing: 'smallest masses',
}

const unitText: Readonly<Record<Unit, string>> = {
  share: '\u00a0%',
  mass: '\u00a0g',
  pH: '',
  celsius: '\u00a0°C',
  HLB: '',
  'price per kg': ' a kg',
}

function numberText(value: number, unit: Unit, format: Format): string {
  switch (unit) {
    case 'share':
      return format.number(Number((value * 100).toPrecision(4)))
    case 'mass':
      return format.mass(value, value < 1_000_000 ? 100 : 10_000)
    case 'price per kg':
      return format.number(value, 2)
    default:
      return format.number(value)
  }
}

const partOfOils = (known: number, format: Format): string =>
  known > 0.995 ? '' : ` (reckoned over ${format.percent(known, 0)} of it)`

const one = (names: readonly string[], singular: string, plural: string): string =>
  names.length === 1 ? singular : plural

function listed(names: readonly string[]): string {
  if (names.length <= 1) return names[0] ?? ''
  return `${names.slice(0, -1).join(', ')} and ${names.at(-1) ?? ''}`
}
