import type { TemplateRefusal } from '../../batch/template-problem'
import type { SentencesOf } from './sentences'

/** What is said about a person's own templates for stability plans. */
export const templateSentences: SentencesOf<TemplateRefusal> = {
  TEMPLATE_NAMELESS: () => 'The template has no name yet. Type one to find it by.',
  TEMPLATE_NAME_LONG: ({ most }) => `The name of the template is too long: ${most} signs at the most. Shorten it.`,
  TEMPLATE_THERE: ({ name }) => `There is a template named “${name}” already. Type another name.`,
}
