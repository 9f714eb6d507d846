import type { BatchRefusal } from './refusal'
import { planProblem } from './stability-plan-problem'
import type { KeptTemplate, StabilityTemplate } from './stability-templates'

export type TemplateRefusal =
  | { readonly code: 'TEMPLATE_NAMELESS' }
  | { readonly code: 'TEMPLATE_NAME_LONG'; readonly most: number }
  | { readonly code: 'TEMPLATE_THERE'; readonly name: string }

/** Signs that a list of templates shows of a name. */
const longestName = 80

/** Why a template cannot be kept beside the others; null where it can. It must make a plan for some batch. */
export function templateProblem(
  template: KeptTemplate,
  others: readonly StabilityTemplate[],
): TemplateRefusal | BatchRefusal | null {
  const name = template.name.trim()
  if (name === '') return { code: 'TEMPLATE_NAMELESS' }
  if (name.length > longestName) return { code: 'TEMPLATE_NAME_LONG', most: longestName }
  const there = others.find((other) => other.id !== template.id && plain(other.name) === plain(name))
  if (there) return { code: 'TEMPLATE_THERE', name: there.name }
  // The day on which jars are set aside is the batch's own.
  return planProblem({ ...template, startsAtMs: 0 }, 0)
}

const plain = (name: string): string => name.trim().replace(/\s+/g, ' ').toLowerCase()
