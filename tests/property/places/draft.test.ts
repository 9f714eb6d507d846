import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { Formula, Revision } from '../../../src/batch/formula'
import { draftOf } from '../../../src/places/formulas/draft'
import { optionsOf } from '../../../src/places/formulas/draft-options'
import { readDraft } from '../../../src/places/formulas/draft-read'
import { record, redo, startHistory, undo } from '../../../src/places/formulas/editor-history'
import { propertyRuns } from '../runs'
import { anyEdit, applyEdit } from './any-edit'
import { anyRevision } from './any-revision'

const materials = ['m0', 'm1', 'm2'].map((value) => ({ value, label: value }))

const formulaOf = (revision: Revision): Formula => ({
  id: 'f',
  code: 'F-1',
  name: 'Formula',
  nickname: 'F',
  contact: 'leave-on',
  revisions: [revision],
})

describe('a formula while it is changed', () => {
  it('[I27] any revision, shown as texts with either decimal mark and read back, is the same revision', () => {
    fc.assert(
      fc.property(anyRevision, fc.constantFrom('.' as const, ',' as const), (revision, mark) => {
        const draft = draftOf(formulaOf(revision), revision, mark)
        const world = { options: optionsOf(draft, materials), sizeUg: null, sums: new Map() }
        expect(readDraft(draft, world, 1)).toEqual({
          ok: true,
          value: { head: { code: 'F-1', name: 'Formula', nickname: 'F', contact: 'leave-on' }, revision },
        })
      }),
      propertyRuns,
    )
  })

  it('[F30] undo takes back every edit, and redo brings each of them again, over any edits', () => {
    fc.assert(
      fc.property(anyRevision, fc.array(anyEdit, { maxLength: 25 }), (revision, edits) => {
        const first = draftOf(formulaOf(revision), revision, '.')
        const states = [first]
        for (const edit of edits) states.push(applyEdit(states.at(-1) ?? first, edit))
        let history = states.slice(1).reduce((all, next) => record(all, next), startHistory(first))
        for (const state of states.slice(0, -1).toReversed()) {
          history = undo(history)
          expect(history.now).toBe(state)
        }
        expect(undo(history)).toBe(history)
        expect(history.now).toEqual(draftOf(formulaOf(revision), revision, '.'))
        for (const state of states.slice(1)) {
          history = redo(history)
          expect(history.now).toBe(state)
        }
        expect(redo(history)).toBe(history)
      }),
      propertyRuns,
    )
  })

  it('[F30] what is typed in one field is one thing to undo, and typing after an undo forgets what was undone', () => {
    const typed = ['1', '1.', '1.5'].reduce((all, next) => record(all, next, 'line share'), startHistory(''))
    expect(undo(typed).now).toBe('')
    const other = record(undo(typed), '2', 'line share')
    expect(redo(other).now).toBe('2')
    expect(undo(undo(record(other, 'x', 'line note'))).now).toBe('')
  })

  it('[F32] however lines and steps are moved, each of them is there exactly once', () => {
    const idsOf = (draft: ReturnType<typeof draftOf>) => ({
      lines: draft.phases.flatMap(({ lines }) => lines.map(({ id }) => id)).toSorted(),
      steps: draft.steps.map(({ id }) => id).toSorted(),
    })
    const moves = anyEdit.filter(({ does }) => does.startsWith('place') || does === 'step' || does === 'move')
    fc.assert(
      fc.property(anyRevision, fc.array(moves, { maxLength: 25 }), (revision, edits) => {
        const first = draftOf(formulaOf(revision), revision, '.')
        expect(idsOf(edits.reduce(applyEdit, first))).toEqual(idsOf(first))
      }),
      propertyRuns,
    )
  })
})
