import type { BatchRefusal } from '../../batch/refusal'
import type { SentencesOf } from './sentences'

type StabilityCode =
  | 'PLAN_LACKS'
  | 'PLAN_TWICE'
  | 'PLAN_LONG'
  | 'PULL_DAY_BAD'
  | 'WINDOW_BAD'
  | 'CYCLE_BAD'
  | 'BEFORE_THE_BATCH'
  | 'NO_SUCH_JAR'
  | 'CYCLES_BEHIND'
  | 'CYCLES_DONE'
  | 'PULLED_ALREADY'
  | 'PULL_EARLY'

/** What is said about plans for kept jars, and about their results. */
export const stabilitySentences: SentencesOf<Extract<BatchRefusal, { code: StabilityCode }>> = {
  PLAN_LACKS: ({ what }) => {
    if (what === 'name') return 'The plan has no name yet. Give it one.'
    if (what === 'condition') return 'The plan does not say how jars are kept. Add a place, or freezing and thawing.'
    if (what === 'pull') return 'The plan has no day on which a jar is pulled. Add one.'
    return 'The plan reads nothing of its jars. Choose a check, or add something else.'
  },
  PLAN_TWICE: ({ what }) => `Twice in the plan: ${what}. Leave one of them out.`,
  PLAN_LONG: ({ what, most }) => `Too long for a plan: “${what}”. Shorten it to ${most} signs.`,
  PULL_DAY_BAD: ({ day }) => `${day} is not a day to pull on. Type whole days from 0 to 3,650.`,
  WINDOW_BAD: ({ day, windowDays }) =>
    `A window of ${windowDays} days round day ${day} cannot be. Type whole days from 0 to 60.`,
  CYCLE_BAD: ({ label }) => `${label}: a cycle takes from 1 to 336 hours, and jars are pulled after 1 to 100 of them.`,
  BEFORE_THE_BATCH: () => 'That is before this batch was begun. Check the date.',
  NO_SUCH_JAR: () => 'That jar is not in the stability plan of this batch.',
  CYCLES_BEHIND: ({ counted, wanted }) =>
    `${counted} of ${wanted} cycles are counted. Count the others first, or pull the jar that is due.`,
  CYCLES_DONE: ({ cycles }) => `All ${cycles} cycles are counted already.`,
  PULLED_ALREADY: ({ jar, label, was }) =>
    `${label} of ${jar} was read already: ${was}. Is this a second reading of it?`,
  PULL_EARLY: ({ jar, days }) =>
    `${jar} is due in ${days === 1 ? '1 day' : `${days} days`}. Is it read before its time?`,
}
