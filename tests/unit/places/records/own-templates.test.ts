import { beforeAll, describe, expect, test } from 'vitest'
import type { App } from '../../../../src/app/app'
import { countEntries } from '../../../../src/app/backup/count-entries'
import { kindRows } from '../../../../src/app/import/preview-words'
import { loadSentences } from '../../../../src/app/refusals'
import { faultInBody } from '../../../../src/batch/schemas/sound-body'
import { createOwnTemplates } from '../../../../src/places/records/own-templates'
import { createPlanForm } from '../../../../src/places/records/stability-plan-form'
import { openWorld } from '../../../support/app-world'
import { signWorld } from '../../../support/sign-world'
import { plan, plannedBench } from '../../../support/stability'

beforeAll(loadSentences)

function templatesIn(world = openWorld()) {
  const { app } = signWorld(world)
  return { world, templates: createOwnTemplates(app as App) }
}

async function kept(
  templates: ReturnType<typeof createOwnTemplates>,
  name: string,
  changed: Partial<typeof plan> = {},
) {
  const answer = await templates.keep(name, { ...plan, ...changed })
  if ('refused' in answer) throw new Error(answer.refused)
  return answer.template
}

describe('own templates', () => {
  test('[K45] a plan is kept under a name, without the limits of its formula, and found again from the log', async () => {
    const { world, templates } = templatesIn()
    const template = await kept(templates, ' Winter ')
    expect(template).toMatchObject({ name: 'Winter', conditions: plan.conditions, pulls: plan.pulls })
    expect(template.measures.map(({ id, limits }) => [id, limits])).toEqual([
      ['ph-rested', undefined],
      ['viscosity', undefined],
      ['look', undefined],
    ])
    const again = templatesIn(world).templates
    await again.load()
    expect(again.all.value).toEqual([template])
    const written = await world.store.log.read(`template:${template.id}`)
    expect(written.map(({ kind, by }) => [kind, by])).toEqual([['saved', 'person-rk']])
    expect(written.map(faultInBody)).toEqual([null])
  })

  test.each<[string, string, Partial<typeof plan>, RegExp]>([
    ['no name', '  ', {}, /^The template has no name yet/],
    ['a name that is too long', 'x'.repeat(81), {}, /80 signs at the most/],
    ['the name of another one', 'winter', {}, /^There is a template named “Winter” already/],
    ['the name of one that the app brings', 'Freeze–thaw only', {}, /^There is a template named “Freeze–thaw only”/],
    ['no pull days', 'Bare', { pulls: [] }, /no day on which a jar is pulled/],
    ['nothing to read', 'Bare', { measures: [] }, /reads nothing of its jars/],
  ])('[K45] %s is refused with a sentence, and nothing is kept', async (_what, name, changed, sentence) => {
    const { templates } = templatesIn()
    await kept(templates, 'Winter')
    const answer = await templates.keep(name, { ...plan, ...changed })
    expect('refused' in answer && answer.refused).toMatch(sentence)
    expect(templates.all.value.map((each) => each.name)).toEqual(['Winter'])
  })

  test('[K45] one is renamed, changed, removed and put back, each an entry of its trail', async () => {
    const { world, templates } = templatesIn()
    const winter = await kept(templates, 'Winter')
    await kept(templates, 'Summer')
    expect(await templates.rename(winter, 'summer')).toMatchObject({ refused: expect.stringMatching(/“Summer”/) })
    const renamed = await templates.rename(winter, 'winter, short')
    if ('refused' in renamed) throw new Error(renamed.refused)
    const pulls = plan.pulls.slice(0, 1)
    expect(await templates.change(renamed.template, { ...plan, pulls })).toMatchObject({
      template: { id: winter.id, name: 'winter, short', pulls },
    })
    const removed = await templates.remove(renamed.template)
    expect(templates.all.value.map(({ name }) => name)).toEqual(['Summer'])
    if ('refused' in removed) throw new Error(removed.refused)
    await templates.putBack(removed.template)
    expect(templates.all.value.map(({ name }) => name)).toEqual(['Summer', 'winter, short'])
    expect(await world.store.log.read(`template:${winter.id}`)).toHaveLength(5)
  })

  test('[K45] goes with a backup by its name, counts as something new, and is checked on its way in', async () => {
    const { world, templates } = templatesIn()
    const template = await kept(templates, 'Winter')
    expect(await countEntries(world.store.log)).toBe(1)
    const none = { fresh: 1, longer: 0, same: 0, meeting: 0 }
    expect(kindRows([{ kind: 'template', ...none }])[0]?.name).toBe('Stability templates')
    const [entry] = await world.store.log.read(`template:${template.id}`)
    const withName = (name: unknown) => entry && faultInBody({ ...entry, body: { document: { ...template, name } } })
    expect([withName('Winter'), withName(''), withName(7)]).toEqual([null, 'body.document.name', 'body.document.name'])
  })

  test('[K45] with storage full nothing is kept, and it is said', async () => {
    const { world, templates } = templatesIn()
    world.store.setMood('full')
    expect(await templates.keep('Winter', plan)).toMatchObject({ refused: expect.stringMatching(/full/) })
    expect(templates.all.value).toEqual([])
  })

  test('[K45] for another batch its own checks are read, and what it does not check is read as something else', async () => {
    const { templates } = templatesIn()
    const measures = [
      { id: 'visc', property: 'viscosity', label: 'viscosity, rested', unit: 'Pa·s', method: 'spindle 3' },
      { id: 'crumble', property: 'appearance', label: 'Crumble' },
    ] as const
    const template = await kept(templates, 'Winter', { measures })
    const { state } = plannedBench()
    const form = createPlanForm(state, 0, () => templates.all.value)
    form.take(template.id)
    expect(form.read()?.measures).toEqual([
      state.header.revision.specification
        .filter(({ id }) => id === 'viscosity')
        .map(({ when: _when, ...own }) => own)[0],
      { id: 'freecrumble', property: 'appearance', label: 'Crumble' },
    ])
    expect(form.read()).toMatchObject({ name: 'Winter', pulls: plan.pulls })
  })
})
