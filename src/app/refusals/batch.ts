import type { BatchRefusal } from '../../batch/refusal'
import { grams, type SentencesOf } from './sentences'
import { stabilitySentences } from './stability'

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
  SIGNATURE_MISSING: () => 'Whoever checks this signs with a PIN.',
  SIGNATURE_BAD: () => "A signature needs a meaning; one in another person's place needs a reason as well.",
  CHANGED_MEANWHILE: () => 'Something was written into this batch meanwhile. Look at it, then sign.',
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
  SURROUNDINGS_ABSURD: ({ temperatureC, leastC, mostC }) =>
    `${temperatureC} °C is not between ${leastC} and ${mostC} °C. Check the decimal mark and the unit.`,
  VALUE_ABSURD: ({ property, value, meant }) =>
    meant === undefined
      ? `${value} is not a ${property} that can be.`
      : `A ${property} of ${value}: was ${meant} meant?`,
  UNIT_MISSING: ({ label }) => `${label} has a figure without a unit, and says nothing so. Say in what it was read.`,
  OFF_SCALE: ({ label, value, least, most }) =>
    `${value} is not a step of the scale of ${label}. It goes from ${least} to ${most}, in whole steps.`,
  HOW_ABSURD: ({ label, what, value }) => `${label}: ${value} is not a ${what} that can be. Check the decimal mark.`,
  DECIDED_ALREADY: ({ decision }) => `That was decided already: ${decision}. Choose another one to change it.`,
  NOT_CLOSED_YET: () => 'This batch is still in hand: what it needs is added there. A rework begins once it is closed.',
  REWORK_OF_REJECTED: () => 'This batch was rejected. Change that decision first, with a reason.',
  REWORK_WITHOUT_STEPS: () => 'A rework needs at least one step: say what is to be done.',
  NOTHING_READ: () => 'Nothing is entered yet. Fill in at least one check.',
  MINUTES_BAD: () => 'A timer runs from a few seconds to 14 days.',
  MOMENT_BAD: () => 'That moment cannot be read, or has not come yet.',
  NO_SUCH_TIMER: () => 'That timer is not there any more.',
  TARE_BAD: () => 'A tare must be more than zero.',
  NO_TARE_HERE: () => 'The tare of this vessel is not known, so its gross reading says nothing. Enter the tare first.',
  LOSS_IMPOSSIBLE: ({ lossUg }) =>
    `${grams(lossUg)} would be gone, more than there was water. Check the tare and what stands in the vessel.`,
  UNITS_BAD: ({ units }) => `${units} units cannot be counted. Type a whole number from 1 on.`,
  VESSEL_NOT_LIGHTER: ({ beforeUg, afterUg }) =>
    `The vessel reads ${grams(afterUg)} after filling and ${grams(beforeUg)} before: it should be lighter. Check which reading came first.`,
  BELOW_TARE: ({ grossUg, tareUg }) =>
    `${grams(grossUg)} is less than the vessel weighs empty (${grams(tareUg)}). Type the gross reading, vessel and all, or weigh the tare again.`,
  SPEED_ABSURD: ({ rpm }) =>
    `${rpm} rpm is not a speed that a bench tool turns at. Type turns a minute, between 1 and 50,000.`,
  DIAMETER_ABSURD: ({ diameterMm }) =>
    `A tool ${diameterMm} mm across is not one of this bench. Type millimetres, between 2 and 500.`,
  RINSE_ABOVE_HELD_BACK: ({ rinseUg, heldBackUg }) =>
    `${grams(rinseUg)} is more than the ${grams(heldBackUg)} of water that is held back.`,
  SAME_PERSON_ALREADY: () => 'That person has the batch already.',
  ...stabilitySentences,
}
