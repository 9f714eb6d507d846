import type { Values } from '../../app/forms/field-spec'
import { showNumber } from '../../app/forms/show-fields'
import type { DraftItem, FormulaDraft } from './draft'
import { withSteps } from './draft-edit'
import { readShare, type ShareWorld } from './share-text'

type NewId = () => string

interface Split {
  readonly draft: FormulaDraft
  /** What is to be looked at next: the new line, or the new weighing of a q.s. line. */
  readonly id: string
}

/**
 * One line becomes two of the same material, each with half the share (and its own weighing, tolerance and lots). A q.s.
 * line stays one line: it is weighed in one more step, whose share is still to be typed.
 */
export function splitLine(draft: FormulaDraft, id: string, world: ShareWorld, mark: '.' | ',', newId: NewId): Split {
  const line = draft.phases.flatMap(({ lines }) => lines).find((each) => each.id === id)
  if (line === undefined) return { draft, id }
  return line.values['amount.kind'] === 'qs' ? addPortion(draft, line, newId) : halved(draft, line, world, mark, newId)
}

function halved(draft: FormulaDraft, line: DraftItem, world: ShareWorld, mark: '.' | ',', newId: NewId): Split {
  const id = newId()
  const values: Values = {
    ...line.values,
    ...Object.fromEntries(
      halvedKeys.flatMap((key) => {
        const read = readShare(line.values[key] ?? '', world)
        return read.ok ? [[key, showNumber(read.value * 50, mark)]] : []
      }),
    ),
  }
  const phases = draft.phases.map((phase) => {
    const at = phase.lines.findIndex((each) => each.id === line.id)
    return at < 0 ? phase : { ...phase, lines: phase.lines.toSpliced(at, 1, { ...line, values }, { id, values }) }
  })
  return { draft: withSteps({ ...draft, phases }, newId), id }
}

/** Another weighing after the last one, with no share yet: until one is typed it takes the rest. */
function addPortion(draft: FormulaDraft, line: DraftItem, newId: NewId): Split {
  const id = newId()
  const last = draft.steps.findLastIndex(({ values }) => values.kind === 'weigh' && values.line === line.id)
  const beside = draft.steps[last]?.values ?? {}
  const { kind = 'weigh', vessel = '', phase = '' } = beside
  const step = { id, values: { kind, line: line.id, vessel, phase, portion: '' } }
  return { draft: { ...draft, steps: draft.steps.toSpliced(last + 1, 0, step) }, id }
}

const halvedKeys = ['amount.fraction', 'amount.expected', 'amount.min', 'amount.max', 'range.min', 'range.max'] as const
