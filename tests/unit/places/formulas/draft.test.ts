import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { readCatalogueFile } from '../../../../src/app/import/import-documents'
import { draftOf, duplicateOf } from '../../../../src/places/formulas/draft'
import { optionsOf } from '../../../../src/places/formulas/draft-options'
import { readDraft } from '../../../../src/places/formulas/draft-read'

const file = readCatalogueFile(readFileSync('demo-data/catalogue.json', 'utf8'))
if (!file.ok) throw new Error('The demonstration cannot be read')
const { formulas, materials } = file.value
const choices = materials.map(({ id, name }) => ({ value: id, label: name }))

describe('a formula as texts', () => {
  for (const formula of formulas)
    for (const mark of ['.', ','] as const)
      it(`[I27] ${formula.name}, shown with "${mark}" and read again, is the same revision`, () => {
        const revision = formula.revisions.at(-1)
        if (!revision) throw new Error('No revision')
        const { approvedBy: _by, approvedAt: _at, ...unapproved } = revision
        const draft = draftOf(formula, revision, mark)
        const read = readDraft(
          draft,
          { options: optionsOf(draft, choices), sizeUg: null, sums: new Map() },
          revision.number,
        )
        expect(read).toEqual({
          ok: true,
          value: {
            head: { code: formula.code, name: formula.name, nickname: formula.nickname, contact: formula.contact },
            revision: unapproved,
          },
        })
      })

  it('a duplicate stands on its own and says that it is a copy', () => {
    const [formula] = formulas
    const revision = formula?.revisions[0]
    if (!formula || !revision) throw new Error('No formula')
    const copy = duplicateOf(draftOf(formula, revision, '.'), 'other')
    expect(copy).toMatchObject({ id: 'other', from: null })
    expect(copy.head.values).toMatchObject({ name: `${formula.name}, copy`, code: `${formula.code}-COPY` })
  })
})
