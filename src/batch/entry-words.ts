import { capital } from './capital'
import { instrumentWords, kindOfRemedy, measuredWords, planWords, type Say, surroundingsWords } from './entry-phrases'
import type { Event } from './event'
import { fingerprintOf } from './key-trail'
import { type BatchEvent, type Bodies, isKnown } from './kinds'

/** One sentence for an entry, whatever its kind: an unknown one is named, never dropped. */
export function wordsOf(event: Event, say: Say): string {
  if (!isKnown(event)) return `An entry of a kind that this version does not know: ${event.kind}.`
  // People end their reasons and notes with a full stop, or not.
  return knownWords(event, say).replace(/([.!?])\.(?= |$)/g, '$1')
}

function knownWords(event: BatchEvent, say: Say): string {
  switch (event.kind) {
    case 'opened': {
      const { code, formulaName, revision, sizeUg } = event.body
      return `Opened ${code}: ${formulaName} revision ${revision.number}, ${say.mass(sizeUg)}.`
    }
    case 'preflight-checked': {
      const done = event.body.items.filter((item) => item.done).length
      return `Looked over the bench: ${done} of ${event.body.items.length} points done.`
    }
    case 'instrument-checked':
      return `${instrumentWords(event.body.instrument, say)}${event.body.good ? '.' : ': not good.'}`
    case 'tared': {
      const { vessel, tareUg, standsIn } = event.body
      return `Tared ${say.vessel(vessel)} at ${say.mass(tareUg)}${standsIn ? `, with ${standsIn} in it` : ''}.`
    }
    case 'lot-chosen': {
      const { line, lots, reason } = event.body
      return `Chose lot ${lots.map(say.lot).join(', then ')} for ${say.line(line)}${because(reason)}.`
    }
    case 'lot-corrected': {
      const about = say.entry(event.body.entry)
      return `Corrected the lot to ${say.lot(event.body.lot)}${about === null ? '' : ` of “${about}”`}: ${event.body.reason}.`
    }
    case 'struck': {
      const about = say.entry(event.body.entry)
      return `Struck out ${about === null ? 'an entry that is not here' : `“${about}”`}: ${event.body.reason}.`
    }
    case 'weighed':
    case 'adjusted':
    case 'made-up':
    case 'unplanned-added':
      return additionWords(event, say)
    case 'charged':
    case 'transferred':
    case 'discarded':
    case 'spilled':
    case 'evaporated':
    case 'sampled':
    case 'filled':
      return movementWords(event, say)
    case 'step-started':
      return `Started: ${say.step(event.body.step)}.`
    case 'step-finished': {
      const { step, saw, toolRpm, toolMm, checkedBy } = event.body
      const tool = toolMm === undefined ? '' : ` (${say.number(toolMm)} mm across)`
      const speed = toolRpm === undefined ? '' : `, at ${say.number(toolRpm)} rpm${tool}`
      return `Finished: ${say.step(step)}${speed}${saw ? `, ${saw}` : ''}${checked(checkedBy, say)}.`
    }
    case 'step-skipped':
      return `Skipped: ${say.step(event.body.step)}. ${capital(event.body.reason)}.`
    case 'gate-passed':
      return `Went on with ${say.step(event.body.step)} all the same (${event.body.detail}): ${event.body.reason}.`
    case 'temperature-read':
      return `${say.vessel(event.body.vessel)} read ${say.number(event.body.temperatureC)} °C.`
    case 'bath-changed':
      return `${say.vessel(event.body.vessel)}: ${event.body.what}.`
    case 'surroundings-told':
      return surroundingsWords(event.body, say)
    case 'timer-started': {
      const { label, startedAtMs, deadlineAtMs } = event.body
      return `Started the timer of ${label}: ${say.duration(deadlineAtMs - startedAtMs)}.`
    }
    case 'timer-acknowledged': {
      const late = event.body.lateMs > 0 ? `, ${say.duration(event.body.lateMs)} late` : ''
      return `Stopped the bell${late}.`
    }
    case 'measured':
      return measuredWords(event.body, say)
    case 'deviation-noticed':
      return deviationWords(event.body, say)
    case 'remedy-chosen': {
      const { remedy, reason, totalUg, targets } = event.body
      const changed = targets.length === 0 ? '' : `, ${targets.length} targets changed`
      return `Chose to ${kindOfRemedy(remedy)}: ${say.mass(totalUg)} in all${changed}. ${capital(reason)}.`
    }
    default:
      return courseWords(event, say)
  }
}

function deviationWords(body: Bodies['deviation-noticed'], say: Say): string {
  const [name, mass] = [say.line(body.line), say.mass(body.byUg)]
  const inCup = body.inCup ? ', still in its cup' : ''
  switch (body.cause) {
    case 'forgotten':
      return `${mass} of ${name} is missing: its step has passed.`
    case 'foreign':
      return `${mass} of ${name} is in and not in the formula.`
    case 'loss':
      return `${mass} of ${name} is gone, with what stood with it.`
    case 'lot':
      return `${name} came from a lot that was not to be used${inCup}.`
    default:
      return `${name} is ${mass} ${body.direction}${inCup}.`
  }
}

type Addition = Extract<BatchEvent, { kind: 'weighed' | 'adjusted' | 'made-up' | 'unplanned-added' }>

function additionWords(event: Addition, say: Say): string {
  const lot = event.body.lot === undefined ? '' : `, lot ${say.lot(event.body.lot)}`
  const net = say.mass(event.body.netUg)
  switch (event.kind) {
    case 'weighed': {
      const { line, vessel, targetUg, checkedBy } = event.body
      const where = `into ${say.vessel(vessel)}, target ${say.mass(targetUg)}`
      return `Weighed ${net} of ${say.line(line)}${lot} ${where}${checked(checkedBy, say)}.`
    }
    case 'adjusted':
      return `Added ${net} of ${say.line(event.body.line)}${lot} to ${say.vessel(event.body.vessel)}.`
    case 'made-up': {
      const gross = event.body.grossUg === undefined ? '' : `, at ${say.mass(event.body.grossUg)} gross`
      return `Made up with ${net} of ${say.line(event.body.line)}${lot}${gross}.`
    }
    case 'unplanned-added':
      return `Added ${net} of ${event.body.name}${lot}, not in the plan: ${event.body.reason}.`
  }
}

type Movement = Extract<
  BatchEvent,
  { kind: 'charged' | 'transferred' | 'discarded' | 'spilled' | 'evaporated' | 'sampled' | 'filled' }
>

function movementWords(event: Movement, say: Say): string {
  switch (event.kind) {
    case 'charged':
    case 'transferred': {
      const { from, to, residueUg, rinseUg } = event.body
      const left = residueUg > 0 ? `, ${say.mass(residueUg)} left behind` : ''
      const rinsed = rinseUg > 0 ? `, rinsed with ${say.mass(rinseUg)}` : ''
      return `${say.vessel(from)} into ${say.vessel(to)}${rinsed}${left}.`
    }
    case 'discarded': {
      const { vessel, massUg, line, reason } = event.body
      if (massUg === 'all') return `Threw away all of ${say.vessel(vessel)}: ${reason}.`
      const what = line === undefined ? '' : ` of ${say.line(line)}`
      return `Took ${say.mass(massUg)}${what} out of ${say.vessel(vessel)}: ${reason}.`
    }
    case 'spilled':
      return `Spilled ${say.mass(event.body.massUg)} from ${say.vessel(event.body.vessel)}: ${event.body.reason}.`
    case 'evaporated': {
      const { vessel, massUg, line, seenBy } = event.body
      return `${say.mass(massUg)} of ${say.line(line)} evaporated from ${say.vessel(vessel)} (${seenBy}).`
    }
    case 'sampled': {
      const { massUg, jars: count, purpose } = event.body
      if (count === 0) return `Took ${say.mass(massUg)} out to read ${purpose}.`
      return `Took ${say.mass(massUg)} as samples, ${count} ${count === 1 ? 'jar' : 'jars'}: ${purpose}.`
    }
    case 'filled':
      return filledWords(event.body, say)
  }
}

function filledWords({ massUg, units, grossBeforeUg, grossAfterUg }: Bodies['filled'], say: Say): string {
  const read = [
    ...(grossBeforeUg === undefined ? [] : [`${say.mass(grossBeforeUg)} before`]),
    ...(grossAfterUg === undefined ? [] : [`${say.mass(grossAfterUg)} after`]),
  ]
  const vessel = read.length === 0 ? '' : `; the vessel read ${read.join(' and ')}`
  return `Filled ${say.mass(massUg)} into ${units === 1 ? '1 unit' : `${units} units`}${vessel}.`
}

type Course = Extract<
  BatchEvent,
  {
    kind:
      | 'noted'
      | 'pictured'
      | 'person-changed'
      | 'parked'
      | 'resumed'
      | 'signed'
      | 'device-signed'
      | 'clock-jumped'
      | 'healed'
      | 'stability-planned'
      | 'cycle-counted'
      | 'abandoned'
      | 'reworked'
      | 'closed'
  }
>

function courseWords(event: Course, say: Say): string {
  switch (event.kind) {
    case 'noted':
      return event.body.deviation === undefined
        ? `Note: ${event.body.text}`
        : `Looked into a deviation: ${event.body.text}`
    case 'pictured':
      return event.body.caption === '' ? 'Picture.' : `Picture: ${event.body.caption}.`
    case 'person-changed':
      return `Handed over from ${say.person(event.body.from)} to ${say.person(event.body.person)}.`
    case 'parked':
      return `Put aside: ${event.body.reason}.`
    case 'resumed':
      return 'Taken up again.'
    case 'signed':
      return signedWords(event.body, say)
    case 'device-signed':
      return `Signed by the tablet, with its key ${fingerprintOf(event.body.key)}.`
    case 'clock-jumped': {
      const way = event.body.byMs < 0 ? 'back' : 'forward'
      return `The tablet's clock moved ${way} by ${say.duration(Math.abs(event.body.byMs))}.`
    }
    case 'healed':
      return `One copy of the data was mended from the other: ${event.body.entries} entries.`
    case 'stability-planned':
      return planWords(event.body)
    case 'cycle-counted':
      return `Counted one more freeze–thaw cycle (${event.body.condition}).`
    case 'abandoned':
      return `Given up: ${event.body.reason}.`
    case 'reworked': {
      const { part, reason, returned, steps } = event.body
      const back = returned ? `, ${say.mass(returned.massUg)} back into ${say.vessel(returned.vessel)}` : ''
      return `Opened again for rework ${part}, ${steps.length} ${steps.length === 1 ? 'step' : 'steps'}${back}: ${reason}.`
    }
    case 'closed':
      return `Closed: ${event.body.decision}${event.body.note ? `. ${capital(event.body.note)}` : ''}.`
  }
}

function signedWords({ person, meaning, how, insteadOf, reason }: Bodies['signed'], say: Say): string {
  const by = how === 'pin' ? ', with a PIN' : how === 'name' ? ', by name' : ''
  const place = insteadOf === undefined ? '' : `, in the place of ${say.person(insteadOf)} (${reason})`
  return `Signed by ${say.person(person)}: ${meaning}${by}${place}.`
}

const because = (reason: string | undefined): string => (reason ? `: ${reason}` : '')

const checked = (person: string | undefined, say: Say): string =>
  person === undefined ? '' : `, checked by ${say.person(person)}`
