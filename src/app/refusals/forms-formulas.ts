import type { RevisionProblem } from '../../batch/schemas/check-revision'
import type { SentencesOf } from './sentences'

/** What keeps a formula from being weighed, and what would mend it. */
export const formulaSentences: SentencesOf<RevisionProblem> = {
  FORMULA_NO_LINES: () => 'There is no line yet. Add the first material.',
  FORMULA_NO_VESSEL: () => 'There is no vessel yet. Add the one that the batch is made in.',
  FORMULA_NOT_WHOLE: ({ total }) =>
    `The lines come to ${percent(total)}, not 100 %. Make one of them the q.s. line, or change the others.`,
  FORMULA_TWO_QS: ({ names }) => `${listed(names)} are all q.s. Only one line can make up to 100 %.`,
  FORMULA_QS_NEGATIVE: ({ name, others }) =>
    `The other lines come to ${percent(others)}, so nothing is left for ${name}. Take some off them.`,
  FORMULA_QS_TWO_RESTS: ({ name }) =>
    `${name} is weighed in several steps, and more than one takes the rest. Give all but one a share of their own.`,
  FORMULA_QS_TOO_SMALL: ({ name, left, asked }) =>
    `${name} comes to ${percent(left)}, but its portions and what is held back ask for ${percent(asked)}. Hold back less.`,
  LINE_MATERIAL_UNKNOWN: ({ phase, materialId }) =>
    `A line of phase ${phase} names the material "${materialId}", which is not here. Choose another one.`,
  LINE_NOT_WEIGHED: ({ name }) => `No step weighs ${name}. Add a weigh step for it.`,
  LINE_NOT_ADJUSTED: ({ name }) => `${name} goes in as needed, but no adjust step uses it. Add one.`,
  LINE_OUT_OF_RANGE: ({ name }) => `${name} is outside its own range. Change its share or the range.`,
  LINE_EXPECTED_OUT: ({ name }) => `${name}: what is expected should be between the least and the most.`,
  LINE_WEIGHED_TWICE: ({ name }) => `${name} is weighed in two steps. Make two lines of it, or take one step out.`,
  STEP_LINE_MISSING: ({ step, title }) => `Step ${step} (${title}) names a line that is not there. Choose its line.`,
  STEP_CHECK_MISSING: ({ step, title }) => `Step ${step} (${title}) names a check that is not there. Choose its check.`,
  STEP_VESSEL_MISSING: ({ step, title }) =>
    `Step ${step} (${title}) names a vessel that is not there. Choose its vessel.`,
  STEP_AFTER_MISSING: ({ step, title }) => `Step ${step} (${title}) waits for a step that is not there.`,
  STEP_AFTER_LOOP: ({ step, title }) => `Step ${step} (${title}) waits for a step that itself waits for it.`,
  STEP_INTO_ITSELF: ({ step, title }) => `Step ${step} (${title}) goes from a vessel into the same vessel.`,
  FORMULA_ID_TWICE: ({ id }) => `Two parts of the formula have the same id, "${id}".`,
}

const percent = (fraction: number): string => `${Number((fraction * 100).toFixed(4))} %`

const listed = (names: readonly string[]): string => `${names.slice(0, -1).join(', ')} and ${names.at(-1) ?? ''}`
