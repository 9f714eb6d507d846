import { minutesLeft } from '../../../app/forecast-words'
import type { Format } from '../../../app/format'
import { type Forecast, isTold } from '../../../batch/forecast'
import type { MissedMeeting } from '../../../batch/meeting'
import type { Overheating } from '../../../batch/overheating'
import type { WaitingLines } from '../../../batch/waiting-lines'
import { slopeAt } from '../../../trade/newton'

/** What a card says of the time to a temperature: a line that leads to the number, the number, and what follows. */
export interface ThermalWords {
  readonly say: string
  readonly hero: string
  readonly unit: string
  readonly state: { readonly kind: 'to-go' | 'within' | 'over' | 'waiting'; readonly text: string }
  readonly fact: string
}

/** Weighing wants this much air before the gate opens. */
const slackMs = 5 * 60_000

/** When weighing what waits should begin: late is when it will hold the batch up. */
export function weighMoment(
  { reach }: Forecast,
  waiting: WaitingLines,
  nowMs: number,
): { readonly when: 'later' | 'now' | 'late'; readonly byMs: number } | null {
  if (reach === undefined) return null
  const takesMs = waiting.minutes * 60_000
  const byMs = reach.fromMs - takesMs
  if (nowMs > reach.toMs - takesMs) return { when: 'late', byMs }
  return { when: nowMs >= byMs - slackMs ? 'now' : 'later', byMs }
}

export function thermalWords(
  forecast: Forecast,
  waiting: WaitingLines | null,
  nowMs: number,
  format: Format,
): ThermalWords | null {
  const { course, outlook } = forecast
  const degrees = (celsius: number): string => `${format.number(Math.round(celsius * 10) / 10)} °C`
  const target = degrees(course.targetC)
  switch (outlook.kind) {
    case 'time':
      return timeWords(forecast, waiting, nowMs, format, target)
    case 'unclear': {
      const due = (forecast.readAgainAtMs ?? 0) <= nowMs
      return {
        say: `When it reaches ${target} cannot be told yet. Read again`,
        hero: due ? 'now' : format.time(forecast.readAgainAtMs ?? nowMs),
        unit: '',
        state: { kind: 'waiting', text: whyUnclear(outlook.why) },
        fact: '',
      }
    }
    case 'never':
      return {
        say: `It will not reach ${target}. It levels out near`,
        hero: format.number(Math.round(outlook.levelC)),
        unit: '°C',
        state: { kind: 'over', text: whatHelps(course.by) },
        fact: '',
      }
    case 'contradiction': {
      const readings = course.readings.filter(({ atMs }) => atMs >= course.sinceMs)
      const [a, b] = [readings[outlook.earlier], readings[outlook.later]]
      const both = [a, b].map((each) => format.number(each?.temperatureC ?? 0))
      return {
        say: 'Two readings do not fit each other',
        hero: both.join(' / '),
        unit: '°C',
        state: { kind: 'over', text: 'strike out the wrong one' },
        fact: `${format.time(a?.atMs ?? 0)} and ${format.time(b?.atMs ?? 0)}`,
      }
    }
    case 'ask':
    case 'reached':
      return null
  }
}

function timeWords(
  forecast: Forecast,
  waiting: WaitingLines | null,
  nowMs: number,
  format: Format,
  target: string,
): ThermalWords | null {
  if (!isTold(forecast)) return null
  const left = minutesLeft(forecast.reach, nowMs)
  const moment = waiting && weighMoment(forecast, waiting, nowMs)
  const phase = waiting ? `phase ${waiting.phase}` : ''
  const state =
    moment === null
      ? {
          kind: 'waiting' as const,
          text: left === null ? 'read it now' : `likely ${format.time(forecast.reach.likelyMs)}`,
        }
      : moment.when === 'now'
        ? { kind: 'to-go' as const, text: `time to weigh ${phase}` }
        : moment.when === 'late'
          ? { kind: 'to-go' as const, text: `weigh ${phase} now` }
          : { kind: 'waiting' as const, text: `${phase} from ${format.time(moment.byMs - slackMs)}` }
  return {
    say: left === null ? `Should be at ${target} since` : `Reaches ${target} in`,
    hero: left ?? format.time(forecast.reach.toMs),
    unit: left === null ? '' : 'min',
    state,
    fact: waiting ? waitingWords(waiting, format) : '',
  }
}

const waitingWords = ({ steps, massUg, minutes, ownPace }: WaitingLines, format: Format): string =>
  `${steps.length === 1 ? '1 line' : `${steps.length} lines`}, ${format.massWithUnit(massUg, 1000)}, about ${Math.ceil(minutes)} min${ownPace ? ' at the pace of this batch' : ''}`

function whyUnclear(why: 'FEW_READINGS' | 'SMALL_CHANGE' | 'WIDE'): string {
  switch (why) {
    case 'FEW_READINGS':
      return 'too few readings'
    case 'SMALL_CHANGE':
      return 'it has changed too little'
    case 'WIDE':
      return 'the readings scatter too much'
  }
}

function whatHelps(by: 'air' | 'bath' | 'plate'): string {
  switch (by) {
    case 'air':
      return 'use a bath'
    case 'bath':
      return 'use a colder bath'
    case 'plate':
      return 'turn the plate up'
  }
}

/** The line under the picture: the last reading stands before it. */
export function whyWords({ course, outlook, readAgainAtMs }: Forecast, format: Format): string {
  const count = course.readings.length
  const parts = [count === 1 ? 'One reading' : `${count} readings`]
  if (course.by === 'air' && course.roomC !== undefined) parts.push(`room ${format.number(course.roomC)} °C`)
  if (course.by === 'bath')
    parts.push(
      course.bathC === undefined ? 'bath not read, taken as about 15 °C' : `bath ${format.number(course.bathC)} °C`,
    )
  if (course.setC !== undefined) parts.push(`plate set to ${format.number(course.setC)} °C`)
  if (outlook.kind === 'time') {
    const pace = slopeAt(outlook.fit, outlook.fit.lastMin)
    parts.push(`${pace < 0 ? 'falling' : 'rising'} ${format.number(Math.abs(pace), 1)} °C a minute`)
  }
  const again = readAgainAtMs === undefined ? '' : ` Read again by ${format.time(readAgainAtMs)}.`
  return `${parts.join(', ')}.${again}${outlook.kind === 'time' ? ' An estimate.' : ''}`
}

export function hotWords(hot: Overheating, format: Format): string {
  const last = `${format.number(hot.lastC)} °C`
  return hot.of === 'step'
    ? `${last} is ${format.number(Math.round((hot.lastC - hot.limitC) * 10) / 10)} °C over the ${hot.limitC} °C of this step: take it off the heat.`
    : `${last}: ${hot.name}, which is in it, stands ${hot.limitC} °C at most. Cool it.`
}

export function missedWords(missed: MissedMeeting, nameOf: (vessel: string) => string, format: Format): string {
  const [into, from] = [missed.into, missed.from].map(
    ({ vessel, temperatureC }) => `${nameOf(vessel)} at ${Math.round(temperatureC)} °C`,
  )
  return `They will not meet: at ${format.time(missed.atMs)} ${into}, ${from}. The formula allows ${format.number(missed.mostC)} °C apart. Keep the cooler one warm.`
}

/** A plate whose probe stops short of what the step asks. */
export function setTooLowWords({ course }: Forecast): string | null {
  const { setC, askedC, targetC } = course
  if (setC === undefined || targetC >= askedC - 1) return null
  return `A plate with a probe holds its vessel about 2 °C under its setting: at ${setC} °C it ends near ${targetC} °C. Set it to ${askedC + 2} °C.`
}
