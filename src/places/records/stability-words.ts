import type { Format } from '../../app/format'
import { unitOf } from '../../batch/how-read'
import { dayMs, type PlannedPull, standingOf } from '../../batch/pulls'
import type { PullState } from '../../batch/stability'
import type { Measure } from '../../batch/stability-plan'
import { type Course, type Indication, monthDays } from '../../batch/stability-trend'
import type { MarkKind } from '../../parts/mark'
import { horizonMonths, leastPulls } from '../../trade/stability'
import { figure } from './figure'

export const shownFigure = (value: number, measure: Measure, format: Format): string => {
  const unit = unitOf(measure)
  const shown = figure(value, format, measure.property === 'pH' ? 2 : undefined)
  return unit === undefined ? shown : `${shown} ${unit}`
}

export interface StandingWords {
  readonly kind: MarkKind
  readonly word: string
}

/** Where a jar stands now, and how late it is or was. */
export function standingWords(pull: PullState, nowMs: number): StandingWords {
  if (pull.left.length === 0) {
    return { kind: 'done', word: pull.lateDays > 0 ? `read ${days(pull.lateDays)} late` : 'read' }
  }
  return openWords(pull, nowMs, pull.readings.length > 0)
}

export function openWords(
  pull: Pick<PlannedPull, 'fromMs' | 'untilMs' | 'missedAtMs'>,
  nowMs: number,
  begun = false,
): StandingWords {
  switch (standingOf(pull, nowMs)) {
    case 'to come':
      return { kind: 'to-do', word: 'to come' }
    case 'due': {
      const left = Math.floor((pull.untilMs - nowMs) / dayMs)
      return { kind: begun ? 'part' : 'now', word: left === 0 ? 'due, last day' : `due, ${days(left)} left` }
    }
    case 'late':
      return { kind: 'over', word: `${days(Math.ceil((nowMs - pull.untilMs) / dayMs))} late` }
    case 'missed':
      return { kind: begun ? 'part' : 'closed', word: begun ? 'read in part' : 'missed' }
  }
}

/** What the line through the results says, in sentences: how fast, when it meets a limit, and what that is worth. */
export function courseWords(course: Course, format: Format): readonly string[] {
  const { measure, condition, points, drift } = course
  if (condition.cycles) return [`${points.length} results, by cycles: no line is drawn through them.`]
  if (drift === undefined)
    return [
      `${points.length} ${points.length === 1 ? 'result' : 'results'}: a line needs ${leastPulls}, at two times at least.`,
    ]
  const { trend, shelf, indication } = drift
  const rounded = Number(trend.slope.toPrecision(2))
  const speed = `${rounded > 0 ? '+' : ''}${figure(rounded, format)}${unitOf(measure) === undefined ? '' : ` ${unitOf(measure)}`} a month.`
  const limits = measure.limits
  if (limits?.min === undefined && limits?.max === undefined) return [speed, 'The specification sets no limit to meet.']
  const at = shelf.supported
  const limit = at !== null && at === shelf.crossUpper ? limits.max : limits.min
  const met =
    at === null
      ? `Its 95 % bound meets no limit within ${horizonMonths / 12} years.`
      : at === 0
        ? 'Its 95 % bound is past a limit from the start.'
        : `Its 95 % bound meets ${shownFigure(limit ?? 0, measure, format)} after ${timeWords(at, format)}.`
  const carried = `Supported so far: ${timeWords(shelf.reportable, format)}.`
  return [speed, met, carried, ...(indication.length === 0 ? [] : [indicationWords(indication, trend.count)])]
}

function indicationWords(reasons: readonly Indication[], count: number): string {
  const said: { readonly [I in Indication]: string } = {
    few: `only ${count} results`,
    unlike: 'not all were read as asked',
    beyond: 'further on than the results carry',
    accelerated: 'warmer than a shelf',
  }
  return `Indication only: ${reasons.map((reason) => said[reason]).join('; ')}.`
}

/** Weeks under half a year, then months. */
export function timeWords(months: number, format: Format): string {
  const weeks = (months * monthDays) / 7
  return weeks < 26
    ? `${format.number(Number(weeks.toFixed(1)))} weeks`
    : `${format.number(Number(months.toFixed(1)))} months`
}

const days = (count: number): string => (count === 1 ? '1 day' : `${count} days`)

/** The button that leads to the jars that are due or late. */
export const enterWords = (jars: number): string =>
  jars === 1 ? 'Enter the jar that is due' : `Enter the ${jars} jars that are due`
