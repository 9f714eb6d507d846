import type { Gate } from '../../batch/gate'
import type { BatchState } from '../../batch/state'
import { nameOfVessel } from '../../batch/vessel-name'
import { titleOf } from '../../batch/wording'
import { ago } from '../ago'
import type { Format } from '../format'
import { grams } from './sentences'

/** What a gate says: the rule, and what is known about it. */
export interface GateWords {
  readonly title: string
  readonly text: string
}

export function gateWords(gate: Gate, state: BatchState, format: Format): GateWords {
  const vessel = (id: string): string => nameOfVessel(state, id)
  const degrees = (value: number): string => `${format.number(Math.round(value * 10) / 10)} °C`
  const last = (lastC: number, ageMs: number): string => `Last reading ${degrees(lastC)}, ${ago(ageMs)}.`
  switch (gate.code) {
    case 'ORDER': {
      const names = gate.steps.map((id) => titleOfStep(state, id))
      const more = names.length > 2 ? ` and ${names.length - 2} more` : ''
      return { title: `First: ${names.slice(0, 2).join(', ')}${more}`, text: 'This step waits for it.' }
    }
    case 'TOO_HOT':
      return {
        title: `${gate.material ?? vessel(gate.vessel)} ${gate.material ? 'goes in' : 'is to be'} below ${degrees(gate.limitC)}`,
        text: last(gate.lastC, gate.ageMs),
      }
    case 'TEMPERATURE_OLD':
      return {
        title: `Read the temperature of ${lower(vessel(gate.vessel))} again`,
        text: last(gate.lastC, gate.ageMs),
      }
    case 'TEMPERATURE_UNKNOWN':
      return {
        title: `Read the temperature of ${lower(vessel(gate.vessel))}`,
        text: gate.limitC === undefined ? 'It has not been read yet.' : `${degrees(gate.limitC)} is what counts here.`,
      }
    case 'NOT_YET_WARM':
      return {
        title: `${vessel(gate.vessel)} is to reach ${degrees(gate.leastC)}`,
        text: `Last reading ${degrees(gate.lastC)}.`,
      }
    case 'TOO_FAR_APART':
      return {
        title: `The two are ${degrees(gate.differenceC)} apart`,
        text: `They go together within ${degrees(gate.mostC)}: less shock for the emulsion.`,
      }
    case 'TIMER_RUNNING':
      return { title: `${format.duration(gate.leftMs)} to go`, text: 'The time of this step is not over.' }
    case 'TIMER_NOT_STARTED':
      return { title: 'The timer has not been started', text: `This step takes ${gate.minutes} min.` }
    case 'NO_TARE':
      return { title: `${vessel(gate.vessel)} has no tare`, text: 'Without it, make-up cannot tell what is gone.' }
    case 'NO_LOT':
      return { title: 'No lot is chosen', text: 'The record names the lot of every material.' }
    case 'LOT_EXPIRED':
      return { title: `Lot ${gate.lot} has expired`, text: 'Take another lot, or say why it is used.' }
    case 'LOT_QUARANTINED':
      return { title: `Lot ${gate.lot} is in quarantine`, text: 'It has not been released for use.' }
    case 'CUP_EMPTY':
      return { title: `${vessel(gate.vessel)} is empty`, text: 'Weigh into it first.' }
    case 'CUP_TOO_OLD':
      return {
        title: `${vessel(gate.vessel)} has stood ${format.duration(gate.ageMs)}`,
        text: `It is good for ${gate.mostMinutes} min once open.`,
      }
    case 'DEVIATION_OPEN':
      return { title: 'Choose a way on first', text: 'This line is over its band.' }
    case 'ABOVE_MAXIMUM':
      return { title: `That would be ${grams(gate.massUg)} in all`, text: `The formula allows ${grams(gate.mostUg)}.` }
    case 'ABOVE_THEORY':
      return {
        title: `${grams(gate.aboveUg)} more than the records know of`,
        text: 'Something was added and not written down, or the tare is wrong.',
      }
    case 'SPEED_OUTSIDE': {
      const { rpm, range, tool } = gate
      const [least, most] = [range.min, range.max].map((each) => format.number(each))
      return {
        title: `${format.number(rpm)} rpm is ${rpm < range.min ? 'slower' : 'faster'} than the formula says`,
        text: `${least}–${most} rpm with the ${tool}. Check the display, or say why.`,
      }
    }
    case 'OUTSIDE_LIMITS': {
      const window = [gate.low, gate.high].map((each) => (each === undefined ? '' : format.number(each))).join('–')
      const now = gate.value === undefined ? 'has not been read yet' : `reads ${format.number(gate.value)}`
      return { title: `${gate.label} ${now}`, text: `The window is ${window}.` }
    }
  }
}

function titleOfStep(state: BatchState, id: string): string {
  const planned = state.plan.byId.get(id)
  return planned === undefined ? id : titleOf(planned.step, state.header)
}

const lower = (text: string): string => `the ${text.charAt(0).toLowerCase()}${text.slice(1)}`
