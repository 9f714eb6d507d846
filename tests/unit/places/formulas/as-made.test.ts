import { describe, expect, it } from 'vitest'
import type { App } from '../../../../src/app/app'
import { madeOtherwise } from '../../../../src/batch/as-made'
import type { MadeOtherwise } from '../../../../src/batch/made-otherwise'
import { withPremixes } from '../../../../src/batch/premix'
import { checkRevision } from '../../../../src/batch/schemas/check-revision'
import { takeOver } from '../../../../src/places/formulas/as-made-draft'
import { createAsMade } from '../../../../src/places/formulas/as-made-model'
import { draftOf } from '../../../../src/places/formulas/draft'
import { keptDraft } from '../../../../src/places/formulas/draft-keeping'
import { optionsOf } from '../../../../src/places/formulas/draft-options'
import { readDraft } from '../../../../src/places/formulas/draft-read'
import { demonstrationCatalogue } from '../../../house/demonstration/catalogue'
import { grams, openTestBench } from '../../../support/batch'
import { formulas, lotionHeader } from '../../../support/formulas'
import { runUpTo } from '../../../support/run'
import { fakeApp } from '../../app/import/fake-app'

/** A lotion with too much squalane, glycerin that was not in the plan, and no homogenising. */
const madeBatch = () => {
  const bench = openTestBench(lotionHeader())
  runUpTo(bench, 'a-phytate')
  bench.intend({
    do: 'add-unplanned',
    name: 'Panthenol',
    materialId: 'panthenol-75',
    vessel: 'main',
    netUg: grams(5),
    reason: 'softer feel',
  })
  runUpTo(bench, 'b-squalane')
  bench.weigh('b-squalane', '15.9')
  bench.settle('accept')
  runUpTo(bench, 'b-homogenise')
  bench.intend({ do: 'skip-step', step: 'b-homogenise', reason: 'the tool is broken' })
  runUpTo(bench)
  return bench
}

const counter = () => {
  const last = { id: 0 }
  return () => `new-${++last.id}`
}

/** The revision that a draft with these differences taken over makes. */
const revisionWith = (chosen: readonly MadeOtherwise[]) => {
  const { revision } = lotionHeader()
  const draft = takeOver(draftOf(formulas.lotion, revision, '.'), chosen, '.', counter())
  const materials = demonstrationCatalogue.materials.map(({ id, name }) => ({ value: id, label: name }))
  const read = readDraft(draft, { options: optionsOf(draft, materials), sizeUg: null, sums: new Map() }, 4)
  if (!read.ok) throw new Error(JSON.stringify(read.refusal))
  return read.value.revision
}

describe('a revision from a batch as it was made', () => {
  it('[F37] with nothing chosen it is the revision that the batch was made by', () => {
    const { approvedBy: _by, approvedAt: _at, ...revision } = lotionHeader().revision
    expect(revisionWith([])).toEqual({ ...revision, number: 4 })
  })

  it('[F37] what is chosen goes in, and the revision can be weighed: shares, an addition where it went in, a step left out', () => {
    const made = madeOtherwise(madeBatch().state).filter(({ beyond }) => beyond)
    const revision = revisionWith(made)
    expect(checkRevision(revision, (id) => id)).toEqual([])
    const lines = revision.phases.flatMap((phase) => phase.lines)
    const squalane = lines.find(({ id }) => id === 'squalane')
    expect(squalane?.amount).toEqual({
      kind: 'fraction',
      fraction: made.find(({ kind }) => kind === 'share') && expect.closeTo(15.9 / 505.9, 3),
    })
    expect(squalane?.range?.max ?? 1).toBeGreaterThanOrEqual(15.9 / 510)
    const added = lines.filter(({ id }) => id.startsWith('new-'))
    expect(added).toMatchObject([{ materialId: 'panthenol-75', amount: { kind: 'fraction' } }])
    const steps = revision.procedure.map(({ id }) => id)
    expect(steps).not.toContain('b-homogenise')
    const weighing = revision.procedure.find((step) => step.kind === 'weigh' && step.line === added[0]?.id)
    expect(weighing).toMatchObject({ vessel: 'main', phase: 'A', instruction: 'softer feel' })
    expect(steps.indexOf(weighing?.id ?? '')).toBe(steps.indexOf('a-water') + 1)
  })

  it('[F37] each difference is chosen by itself; taking over begins the next revision and says where it is from', async () => {
    const { app, gone } = fakeApp()
    const bench = madeBatch()
    const handle = { view: { value: { state: bench.state } } }
    const world = { ...app, batches: { ...app.batches, open: async () => handle } } as unknown as App
    await app.catalogue.save('formula', formulas.lotion)
    const model = createAsMade(world, 'formula-lotion', 'one')
    await model.load()
    expect(model.chosen.value).toEqual(
      new Set(model.differences.value.filter(({ beyond }) => beyond).map(({ id }) => id)),
    )
    for (const { id } of model.differences.value) if (model.chosen.value.has(id) && id !== 'squalane') model.toggle(id)
    expect([...model.chosen.value]).toEqual(['squalane'])
    await model.take()
    const draft = await keptDraft(app.drafts, 'formula-lotion')
    expect(draft?.head.values.note).toBe(`From batch ${bench.state.header.code} as it was made.`)
    expect(draft?.from).toBe(3)
    const share = draft?.phases.flatMap(({ lines }) => lines).find(({ id }) => id === 'squalane')?.values[
      'amount.fraction'
    ]
    expect(Number(share)).toBeCloseTo((15.9 / 505.9) * 100, 1)
    expect(draft?.steps.map(({ id }) => id)).toContain('b-homogenise')
    expect(gone).toEqual([{ place: 'formulas', formula: 'formula-lotion' }])
    expect(model.hasBegun.value).toBe(false)
    await model.load()
    expect(model.hasBegun.value).toBe(true)
  })

  it('[F37] a batch weighed with a pre-mix is counted by its parts, and its next revision knows of none', async () => {
    const whole = lotionHeader()
    const mixed = withPremixes(
      whole.revision,
      [{ line: 'sodium-phytate-50', into: 'propanediol', oneIn: 10 }],
      new Map(whole.materials.map((each) => [each.id, each])),
    )
    if (!mixed.ok) throw new Error(mixed.refusal.code)
    const dilution = mixed.value.materials.map(({ id }) => id)
    const bench = openTestBench({
      ...whole,
      revision: mixed.value.revision,
      premixes: mixed.value.premixes,
      materials: [...whole.materials, ...mixed.value.materials],
      vessels: [...whole.vessels, { id: 'premix:sodium-phytate-50', name: 'Pre-mix', kind: 'cup', tareUg: grams(20) }],
    })
    runUpTo(bench)
    const made = madeOtherwise(bench.state, whole.revision)
    expect(made.filter(({ id }) => id === 'sodium-phytate-50' || id === 'propanediol')).toEqual([])
    const { app } = fakeApp()
    await app.catalogue.save('formula', formulas.lotion)
    const handle = { view: { value: { state: bench.state } } }
    const model = createAsMade(
      { ...app, batches: { ...app.batches, open: async () => handle } } as unknown as App,
      'formula-lotion',
      'one',
    )
    await model.load()
    await model.take()
    const draft = await keptDraft(app.drafts, 'formula-lotion')
    const used = draft?.phases.flatMap(({ lines }) => lines).map(({ values }) => values.materialId)
    expect(used).toContain('sodium-phytate-50')
    expect(used).not.toEqual(expect.arrayContaining(dilution))
    expect(draft?.steps.some(({ id }) => id.startsWith('premix:'))).toBe(false)
  })

  it('[F37] a batch, or a formula, that is not here is said', async () => {
    const { app } = fakeApp()
    const model = createAsMade(app, 'formula-lotion', 'none')
    await model.load()
    expect(model.missing.value).toBe(true)
  })
})
