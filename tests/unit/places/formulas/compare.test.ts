import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { Formula, Revision } from '../../../../src/batch/formula'
import { compareRevisions } from '../../../../src/places/formulas/compare'
import { formulas } from '../../../support/formulas'

const { lotion } = formulas
const newest = (lotion as Formula).revisions.at(-1) as Revision

const compare = (after: Revision, before: Revision = newest) => compareRevisions(lotion, before, after, (id) => id, '.')

const told = (parts: readonly { how: string; label: string }[]) =>
  parts.filter(({ how }) => how !== 'same').map(({ how, label }) => `${how}: ${label}`)

const everything = (after: Revision, before?: Revision) => {
  const { head, ...lists } = compare(after, before)
  return [...head.map(({ label }) => `head: ${label}`), ...Object.values(lists).flatMap(told)]
}

describe('two revisions side by side', () => {
  it('[F36] a revision compared with itself has no difference, whatever its parts are called by id', () => {
    expect(everything(newest)).toEqual([])
    const renamed: Revision = JSON.parse(
      JSON.stringify(newest).replace(/"(id|line|step|vessel|cup|from|check|locksAfter)":"([^"]+)"/g, '"$1":"x-$2"'),
    )
    const after = renamed.procedure.map((step) =>
      step.after ? { ...step, after: step.after.map((id) => `x-${id}`) } : step,
    )
    expect(everything({ ...renamed, procedure: after })).toEqual([])
  })

  it('[F36] lines: the share of each in both, what q.s. makes of it, what is new, gone, or otherwise', () => {
    const [water, oils, ...others] = newest.phases
    if (!water || !oils) throw new Error('No phases')
    const [first, second, ...rest] = oils.lines
    if (!first || !second) throw new Error('No lines')
    const { lines } = compare({
      ...newest,
      phases: [
        water,
        { ...oils, lines: [{ ...first, amount: { kind: 'fraction', fraction: 0.08 }, fixedOrder: true }, ...rest] },
        ...others,
      ],
    })
    const changed = lines.filter(({ how }) => how !== 'same')
    expect(changed).toMatchObject([
      {
        how: 'changed',
        label: first.materialId,
        phase: 'B',
        was: 0.07,
        is: 0.08,
        fields: [
          { is: '8 %', was: '7 %' },
          { was: 'no', is: 'yes' },
        ],
      },
      { how: 'gone', label: second.materialId, was: 0.03, is: null },
    ])
    const qs = lines.find(({ label }) => label === 'aqua')
    expect(qs?.how).toBe('same')
    expect((qs?.is ?? 0) - (qs?.was ?? 0)).toBeCloseTo(0.02, 12)
  })

  it('[F36] a line that went into another phase says from which into which', () => {
    const [water, oils, ...others] = newest.phases
    const [first, ...rest] = oils?.lines ?? []
    if (!water || !oils || !first) throw new Error('No lines')
    const phases = [{ ...water, lines: [...water.lines, first] }, { ...oils, lines: rest }, ...others]
    expect(compare({ ...newest, phases }).lines.filter(({ how }) => how !== 'same')).toMatchObject([
      { how: 'changed', phase: 'A', fields: [{ label: 'Phase', was: 'B', is: 'A' }] },
    ])
  })

  it('[F36] steps: only the one that moved is said to have moved, and a condition is told with both its figures', () => {
    const { procedure } = newest
    const [one, two, ...more] = procedure
    if (!one || !two) throw new Error('No steps')
    expect(told(compare({ ...newest, procedure: [two, ...more, one] }).steps)).toEqual([
      `moved: ${one.kind === 'weigh' ? 'aqua' : ''}`,
    ])
    const hydrate = procedure.map((step) => (step.kind === 'hydrate' ? { ...step, minutes: 30 } : step))
    expect(compare({ ...newest, procedure: hydrate }).steps.filter(({ how }) => how !== 'same')).toMatchObject([
      { how: 'changed', label: 'Hydrate the gum', fields: [{ label: 'How long', was: '20 min', is: '30 min' }] },
    ])
  })

  it('[F36] every line and step of both is told once, over any choice of what is kept and in any order', () => {
    fc.assert(
      fc.property(fc.shuffledSubarray([...newest.procedure]), fc.subarray([...newest.procedure]), (after, before) => {
        const { steps } = compare({ ...newest, procedure: after }, { ...newest, procedure: before })
        expect(steps.filter(({ how }) => how !== 'added')).toHaveLength(before.length)
        expect(steps.filter(({ how }) => how !== 'gone').map(({ id }) => id)).toEqual(after.map(({ id }) => id))
      }),
      { numRuns: 50 },
    )
  })
})
