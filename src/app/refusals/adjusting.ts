import type { AdjustRefusal } from '../../batch/adjusting'
import type { LeftOut } from '../../batch/ph-readings'
import type { SentencesOf } from './sentences'

/** Why no addition is proposed, and what would help. Amounts can be added by hand all the same. */
export const adjustSentences: SentencesOf<AdjustRefusal> = {
  PH_NOT_READ: () => 'Nothing was read yet. Read the pH first: the amount follows from it.',
  PH_NOT_READ_SINCE: () => 'A portion went in since the last reading. Stir it in, and read again.',
  PH_WINDOW_BAD: () => 'The window of this check has its least above its most. Mend it in the formula.',
  PH_WINDOW_OPEN: () => 'This check needs a least and a most before an amount can be proposed.',
  PH_LEFT_OUT: ({ why, reading }) => leftOutWords(why, reading.sampleC),
  ADJUSTER_UNKNOWN: () => 'This material holds no acid or base that is known here, so no amount is proposed.',
  ADJUSTER_WITHOUT_STRENGTH: () =>
    'How strong this adjuster is stands nowhere. Give its lot an assay, or its material the share of each INCI name.',
  ADJUSTER_MIXED: ({ names }) => `This material mixes ${names.join(' and ')}, so no amount is proposed.`,
  ADJUSTER_CANNOT_REACH: ({ ph }) => `This adjuster is too weak to bring the pH to ${ph}. Take a stronger one.`,
}

/** Why a reading does not count. */
export function leftOutWords(why: LeftOut, sampleC?: number): string {
  switch (why) {
    case 'basis':
      return 'It was read on another dilution than this check asks for. Read it again as the check says.'
    case 'apart':
      return 'It was read more than 3 °C away from the last one, so the two cannot be compared.'
    case 'hot':
      return `The sample was at ${sampleC ?? '?'} °C. Cool it below 30 °C, and read again.`
  }
}
