import { type ReadonlySignal, signal } from '@preact/signals'
import type { App } from '../../app/app'
import { loadWriting } from '../../app/load-writing'
import { type Refusal, sentenceOf } from '../../app/refusals'
import { sayFrom } from '../../app/refusals/sentences'
import { templateSentences } from '../../app/refusals/templates'
import type { StabilityPlan } from '../../batch/stability-plan'
import { type KeptTemplate, stabilityTemplates, templateOf } from '../../batch/stability-templates'
import { type TemplateRefusal, templateProblem } from '../../batch/template-problem'

/** Why nothing was kept, or the template as it stands now. */
type Kept = { readonly refused: string } | { readonly template: KeptTemplate }

/** The templates that people of this house made; each is a stream of its own, and a removed one can be put back. */
export interface OwnTemplates {
  readonly all: ReadonlySignal<readonly KeptTemplate[]>
  readonly load: () => Promise<void>
  readonly keep: (name: string, plan: StabilityPlan) => Promise<Kept>
  /** The same template, with what this plan asks for. */
  readonly change: (template: KeptTemplate, plan: StabilityPlan) => Promise<Kept>
  readonly rename: (template: KeptTemplate, name: string) => Promise<Kept>
  readonly remove: (template: KeptTemplate) => Promise<Kept>
  readonly putBack: (template: KeptTemplate) => Promise<Kept>
}

type World = Pick<App, 'log' | 'clock' | 'ids' | 'settings'>

export function createOwnTemplates({ log, clock, ids, settings }: World): OwnTemplates {
  const all = signal<readonly KeptTemplate[]>([])

  const load = async (): Promise<void> => {
    const heads = await log.heads({ family: 'template', shelf: 'here' })
    // Rows of this family are written by projectDocument alone; a damaged one has no summary.
    const kept = heads.flatMap((head) => (head.summary === null ? [] : [head.summary as KeptTemplate]))
    all.value = kept.sort((one, other) => one.name.localeCompare(other.name))
  }

  const write = async (template: KeptTemplate): Promise<Kept> => {
    const { saveDocument } = await loadWriting()
    const writer = { replica: () => log.replica, clock, ids }
    const by = () => settings.value.value.person || 'nobody'
    const refusal = await saveDocument({ log, writer, by }, 'template', template)
    if (refusal) return { refused: sentenceOf(refusal) }
    await load()
    return { template }
  }

  /** Another page may have kept one of that name meanwhile. */
  const writeSound = async (template: KeptTemplate): Promise<Kept> => {
    await load()
    const problem = templateProblem(template, [...stabilityTemplates, ...all.value])
    return problem ? { refused: said(problem) } : write(template)
  }

  return {
    all,
    load,
    keep: (name, plan) => writeSound(templateOf(ids.next(), name, plan)),
    change: ({ id, name }, plan) => writeSound(templateOf(id, name, plan)),
    rename: (template, name) => writeSound({ ...template, name: name.trim() }),
    remove: (template) => write({ ...template, archived: true }),
    putBack: ({ archived: _archived, ...template }) => writeSound(template),
  }
}

const said = (problem: TemplateRefusal | Refusal): string =>
  isOfTemplates(problem) ? sayFrom<TemplateRefusal>(templateSentences, problem) : sentenceOf(problem)

const isOfTemplates = (problem: TemplateRefusal | Refusal): problem is TemplateRefusal =>
  Object.hasOwn(templateSentences, problem.code)
