import type { BatchRefusal } from '../../batch/refusal'
import type { RemedyRefusal } from '../../trade/remedy'
import type { Allowing, Asking } from '../../trade/remedy-model'
import { grams, type SentencesOf } from './sentences'

export const batchSentences: SentencesOf<BatchRefusal> = {
  SIZE_BAD: () => 'The batch size must be more than zero.',
  FRACTION_BAD: ({ id }) => `Line ${id} has a share that is not between 0 and 100 %.`,
  ASSAY_BAD: ({ id }) => `The lot of line ${id} has an assay that is not between 0 and 100 %.`,
  TOTAL_NOT_100: ({ total }) =>
    `The lines come to ${Number((total * 100).toFixed(3))} %, not 100 %. Make one of them q.s., or change the others.`,
  TWO_QS: () => 'Two lines are q.s. Only one can make up to 100 %.',
  QS_NEGATIVE: ({ shortUg }) => `The other lines leave nothing for q.s.: ${grams(shortUg)} too much.`,
  TARGET_ROUNDS_TO_ZERO: ({ id, targetUg, stepUg }) =>
    `Line ${id} comes to ${grams(targetUg)}, which a balance that reads ${grams(stepUg)} cannot show. Make a larger batch or use a finer balance.`,
  NO_BALANCE: () => 'There is no balance yet. Add one in Setup.',
  UNKNOWN_MATERIAL: ({ line }) => `Line ${line} names a material that is not in the catalogue.`,
  UNKNOWN_LINE: ({ step }) => `Step ${step} names a line that is not in the formula.`,
  UNKNOWN_VESSEL: ({ step, vessel }) => `Step ${step} names the vessel "${vessel}", which is not in the formula.`,
  UNKNOWN_CHECK: ({ step }) => `Step ${step} names a check that is not in the specification.`,
  MASS_NOT_POSITIVE: () => 'The mass must be more than zero.',
  MASS_NOT_WHOLE: () => 'That mass cannot be kept exactly. Type fewer decimals.',
  MORE_THAN_HELD: ({ askedUg, heldUg }) => `${grams(askedUg)} is more than the ${grams(heldUg)} that is in there.`,
  SAME_VESSEL: () => 'It is in that vessel already.',
  NET_NOT_POSITIVE: ({ netUg }) =>
    netUg === 0
      ? 'The two readings are the same: nothing went in.'
      : `The net comes to ${grams(netUg)}. Check which reading came first.`,
  NO_BATCH: () => 'This batch is not here.',
  READ_ONLY: ({ kinds }) =>
    `This batch has entries of a newer version (${kinds.join(', ')}). It can be read here, not changed. Take the newer app.`,
  BATCH_ENDED: ({ stage }) => `This batch is ${stage}. Later checks and notes can still be added from its record.`,
  BATCH_PARKED: () => 'This batch is put aside. Take it up again first.',
  NO_SUCH_STEP: () => 'That step is not in this batch.',
  NOT_FOR_THIS_STEP: () => 'That does not fit this step.',
  STEP_DONE: () => 'This step is done. Strike its entry out to do it again, or add what more goes in as unplanned.',
  GATE: () => 'Something is in the way of this step.',
  REASON_MISSING: () => 'Say why first: one tap or a few words.',
  OVER_BALANCE: ({ massUg, capacityUg, balance }) =>
    `${grams(massUg)} is more than ${balance} can weigh (${grams(capacityUg)}). Weigh it in parts or on a larger balance.`,
  OVER_VESSEL: ({ massUg, roomUg, vessel }) =>
    `${vessel} has room for ${grams(Math.max(0, roomUg))} more; this is ${grams(massUg)}. Check the decimal mark, or use a larger vessel.`,
  OTHER_MATERIAL: ({ line }) => `That lot is not ${line}. Choose a lot of this line.`,
  SECOND_PERSON_MISSING: () => 'This step is checked by a second person: choose who.',
  SAME_PERSON: () => 'Whoever checks must be another person than who does it.',
  NO_SUCH_ENTRY: () => 'That entry is not in this batch.',
  CANNOT_BE_STRUCK: () => 'That entry cannot be struck out: it records what the log itself did.',
  STRUCK_ALREADY: () => 'That entry is struck out already.',
  NO_SUCH_DEVIATION: () => 'That deviation is not there any more.',
  SETTLED_ALREADY: () => 'A way on was chosen already.',
  REMEDY_IMPOSSIBLE: () => 'That way is not open. Choose another one.',
  NOT_IN_CUP: () => 'What is in the vessel cannot come out. Only a cup with nothing else in it gives something back.',
  NOTHING_WEIGHED: () => 'Nothing is weighed here yet.',
  UNKNOWN_VESSEL_HERE: () => 'That vessel is not on this bench.',
  NAME_MISSING: () => 'Say what it is: choose a material or write its name.',
  TEMPERATURE_ABSURD: ({ temperatureC }) =>
    `${temperatureC} °C is not a temperature of this bench. Check the decimal mark and the unit.`,
  VALUE_ABSURD: ({ property, value, meant }) =>
    meant === undefined
      ? `${value} is not a ${property} that can be.`
      : `A ${property} of ${value}: was ${meant} meant?`,
  MINUTES_BAD: () => 'A timer runs from a few seconds to 14 days.',
  MOMENT_BAD: () => 'That moment cannot be read, or has not come yet.',
  NO_SUCH_TIMER: () => 'That timer is not there any more.',
  TARE_BAD: () => 'A tare must be more than zero.',
  NO_TARE_HERE: () => 'The tare of this vessel is not known, so its gross reading says nothing. Enter the tare first.',
  LOSS_IMPOSSIBLE: ({ lossUg }) =>
    `${grams(lossUg)} would be gone, more than there was water. Check the tare and what stands in the vessel.`,
  RINSE_ABOVE_HELD_BACK: ({ rinseUg, heldBackUg }) =>
    `${grams(rinseUg)} is more than the ${grams(heldBackUg)} of water that is held back.`,
  SAME_PERSON_ALREADY: () => 'That person has the batch already.',
}

/** Why a remedy is not open; names of lines and of limits over several lines come in. */
export function whyNot(refusal: RemedyRefusal, nameOf: (line: string) => string): string {
  switch (refusal.code) {
    case 'VESSEL_TOO_SMALL':
      return `Needs ${grams(refusal.neededUg)}, the vessel holds ${grams(refusal.capacityUg)}.`
    case 'STOCK_TOO_SHORT':
      return `Needs ${grams(refusal.neededUg)} more ${nameOf(refusal.id)}, ${grams(refusal.stockUg)} is left.`
    case 'LINE_LOCKED':
      return `Needs ${grams(refusal.neededUg)} more ${nameOf(refusal.id)}; its step is closed.`
    case 'LINE_NOT_IN_FORMULA':
      return 'Something that is not in the formula went in.'
    case 'NO_QS_LINE':
      return 'No line makes up to 100 %.'
    case 'QS_ALREADY_PAST':
      return `${grams(refusal.pastUg)} too much ${nameOf(refusal.id)} is in already.`
    case 'RANGE_CONTRADICTORY':
      return `The range of ${nameOf(refusal.id)} has its least above its most.`
    case 'LINES_CONFLICT':
      return `${asks(refusal.needs, grams(refusal.neededUg), nameOf)}, but ${allows(refusal.allows, nameOf)} ${grams(refusal.allowedUg)}.`
    case 'MINIMUMS_EXCEED_TOTAL':
      return `At ${grams(refusal.totalUg)} the least of all lines comes to ${grams(refusal.minimumsUg)}${refusal.ids.length > 0 ? `: too much is in of ${listed(refusal.ids, nameOf)}` : ''}.`
    case 'MAXIMUMS_BELOW_TOTAL':
      if (refusal.allLocked && refusal.needs.limit === 'high')
        return `There is too much ${nameOf(refusal.needs.id)}, and nothing may be added to dilute it: all lines are closed.`
      return `Needs ${grams(refusal.totalUg)}; all lines at their most come to ${grams(refusal.maximumsUg)}${refusal.ids.length > 0 ? `, for want of ${listed(refusal.ids, nameOf)}` : ''}.`
    case 'CLOSURE_CONFLICT':
      return `The least of the lines asks for a batch of at least ${grams(refusal.neededUg)}, their most allows at most ${grams(refusal.allowedUg)}.`
    case 'COST_UNKNOWN':
      return `What ${nameOf(refusal.id)} costs is not known. Enter its price first.`
    case 'SHARED_LIMITS_CONFLICT':
      return `With what is in, this limit over several lines cannot be kept: ${listed(refusal.ids, nameOf)}.`
    case 'NOT_SOLVED':
      return 'No way was found within these limits. Choose another one.'
  }
}

function asks(limit: Asking, size: string, nameOf: (line: string) => string): string {
  switch (limit.limit) {
    case 'contents':
      return `In already is ${size}`
    case 'least-total':
      return `The batch is to come to ${size}`
    case 'high':
      return `To dilute ${nameOf(limit.id)} the batch must come to at least ${size}`
  }
}

function allows(limit: Allowing, nameOf: (line: string) => string): string {
  switch (limit.limit) {
    case 'capacity':
      return 'the vessel holds'
    case 'locked':
      return `${nameOf(limit.id)} can no longer be added and allows at most`
    case 'stock':
      return `the ${nameOf(limit.id)} that is left allows at most`
  }
}

/** Three names at most, then how many more. */
function listed(ids: readonly string[], nameOf: (line: string) => string): string {
  const names = ids.slice(0, 3).map(nameOf).join(', ')
  return ids.length > 3 ? `${names} and ${ids.length - 3} more` : names
}
