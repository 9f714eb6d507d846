import type { Signal } from '@preact/signals'
import { describe, expect, test } from 'vitest'
import { loadSentences } from '../../../../src/app/refusals'
import type { Formula, Line, Revision } from '../../../../src/batch/formula'
import { createStartModel } from '../../../../src/places/start/model'
import { notesOf } from '../../../../src/places/start/notes'
import { sayRefusal } from '../../../../src/places/start/say'
import { noVessel } from '../../../../src/places/start/vessels'
import { keeping } from '../../../../src/places/start/ways'
import { settle, startApp } from './start-app'

const lotion = 'formula-lotion'

/** Start of the lotion, its newest revision changed, and the stock of lots by id. */
async function started(change: (revision: Revision) => Partial<Revision>, onHand: Record<string, number> = {}) {
  const world = startApp(onHand)
  const { formulas } = world.app.catalogue
  const formula = formulas.value.get(lotion)
  const newest = formula?.revisions.at(-1)
  if (!formula || !newest) throw new Error('no lotion')
  const changed: Formula = { ...formula, revisions: [{ ...newest, ...change(newest) }] }
  // The app shows its signals read-only; here they are the test's own.
  const own = formulas as Signal<ReadonlyMap<string, Formula>>
  own.value = new Map([...formulas.value, [lotion, changed]])
  const model = createStartModel(world.app, lotion)
  await settle()
  return model
}

const withLine =
  (id: string, more: Partial<Line>) =>
  ({ phases }: Revision): Partial<Revision> => ({
    phases: phases.map((phase) => ({
      ...phase,
      lines: phase.lines.map((line) => (line.id === id ? { ...line, ...more } : line)),
    })),
  })

const cardOf = (model: ReturnType<typeof createStartModel>, title: string) =>
  model.cards.value.find((card) => card.title === title)

describe('what a formula asks and cannot have', () => {
  const gum = 'sclerotium-gum'
  const cases: readonly { change: (revision: Revision) => Partial<Revision>; title: string; says: string }[] = [
    {
      change: withLine(gum, { range: { min: 0.005, max: 0.004 } }),
      title: 'Sclerotium gum contradicts itself',
      says: 'At least 0.5 and at most 0.4 %.',
    },
    {
      change: withLine(gum, { range: { min: 0.005, max: 0.006 } }),
      title: 'Sclerotium gum is outside its own limits',
      says: 'It comes to 0.4 % as planned; the formula accepts 0.5–0.6 %.',
    },
    {
      change: withLine('phenoxyethanol-ehg', { range: { min: 0.02, max: 0.03 } }),
      title: 'Phenoxyethanol + EHG: range against use level',
      says: 'The formula accepts 2–3 %, its use level is 0.7–1.1 %.',
    },
    {
      change: withLine('aqua', { range: { min: 0.1, max: 0.2 } }),
      title: 'Water, purified is outside its own limits',
      says: 'as planned; the formula accepts 10–20 %.',
    },
    {
      change: () => ({
        sharedLimits: [
          { id: 'most', name: 'Phenoxyethanol', of: { kind: 'inci', name: 'Phenoxyethanol' }, max: 0.005 },
        ],
      }),
      title: 'Phenoxyethanol is outside its own limits',
      says: 'It comes to 0.9 % as planned; the formula accepts 0–0.5 %.',
    },
  ]
  test.each(cases)('[R45] is named before the batch starts: $title', async ({ change, title, says }) => {
    const model = await started(change)
    const card = cardOf(model, title)
    expect(card?.text).toContain(says)
    expect(model.readyToOpen.value).toBe(false)
    if (!card) return
    model.change(keeping(card.code, card.abouts, 'trial batch'))
    expect(cardOf(model, title)).toBeUndefined()
    expect(model.setUp.value?.header.kept).toContainEqual({
      code: card.code,
      about: card.abouts[0],
      reason: 'trial batch',
    })
  })

  test('[R45] no stock at all is named as such', async () => {
    const model = await started(() => ({}), { 'lot-sg-214': 0, 'lot-sg-221': 0 })
    expect(cardOf(model, 'No Sclerotium gum')?.text).toContain('Nothing is left of what was chosen')
  })

  test('[R45] without a q.s. line a batch may start, and is told what that means', async () => {
    const water = 0.7327
    const model = await started((revision) => ({
      ...withLine('aqua', { amount: { kind: 'fraction', fraction: water } })(revision),
      sharedLimits: [],
    }))
    const setUp = model.setUp.value
    expect(setUp?.plan.ok).toBe(true)
    expect(setUp && notesOf(setUp)).toEqual([
      'No line is q.s.: after a slip none can give way, and a lot of another assay changes the total.',
    ])
  })

  test('[R45] two q.s. lines keep the batch shut, with the reason', async () => {
    const model = await started(withLine('squalane', { amount: { kind: 'qs', portions: [] } }))
    await loadSentences()
    const refusal = model.sizeRefusal.value
    expect(refusal && sayRefusal(refusal)).toBe('Two lines are q.s. Only one can make up to 100 %.')
    expect(model.readyToOpen.value).toBe(false)
  })

  test('[R45] a stirrer that the batch is too small or too large for is named, with a vessel whose stirrer fits', async () => {
    const model = await started(() => ({}))
    model.change({ size: '120', vessels: { main: { ...noVessel, kept: 'vessel-beaker-800' } } })
    const card = cardOf(model, 'The stirrer is not made for this little')
    expect(card?.text).toContain('is stirred in Main beaker; its stirrer moves')
    model.change(card?.ways[0]?.take ?? {})
    expect(model.setUp.value?.header.vessels[0]?.stirsUg).toEqual({ min: 100_000_000, max: 540_000_000 })
    expect(cardOf(model, 'The stirrer is not made for this little')).toBeUndefined()
  })
})
