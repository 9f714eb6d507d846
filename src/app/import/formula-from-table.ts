import type { Material } from '../../batch/catalogue'
import type { Check, Formula, Line, Phase, Revision } from '../../batch/formula'
import type { Step } from '../../batch/step'
import type { Amount } from '../../trade/amount'
import type { Micrograms } from '../../trade/mass'
import { plainName } from './match-material'
import type { LineAmount } from './table/line-amounts'
import type { ReadLine, ReadTable } from './table/understood'

/** What the sheet does not say about a formula, as the person gave it. */
export interface ImportHead {
  readonly code: string
  readonly name: string
  readonly nickname: string
  readonly contact: Formula['contact']
  readonly usualSizeUg: Micrograms
}

export interface ImportedFormula {
  readonly formula: Formula
  /** Materials that are not here yet, as drafts. */
  readonly materials: readonly Material[]
}

interface Making {
  readonly table: ReadTable
  readonly head: ImportHead
  /** The material that a line was said to be; null where it is a new one. */
  readonly materialOf: (line: ReadLine) => string | null
  /** An id for a thing of this import, the same one when asked again. */
  readonly idOf: (thing: string) => string
}

/**
 * The formula that an understood sheet makes, at its first revision: everything is weighed into one vessel, phase by
 * phase, in the order of the sheet; what is as needed is adjusted with at the end. Heating and mixing are added later.
 */
export function formulaFromTable({ table, head, materialOf, idOf }: Making): ImportedFormula {
  const fresh = new Map<string, Material>()
  const materialIdOf = (line: ReadLine): string => {
    const here = materialOf(line)
    if (here !== null) return here
    const key = plainName(line.name)
    const material = fresh.get(key) ?? draftMaterial(idOf(`material ${key}`), line)
    fresh.set(key, material)
    return material.id
  }
  const vessel = { id: idOf('vessel'), name: 'Main beaker', kind: 'vessel' as const }
  const check: Check = { id: idOf('check'), property: 'pH', label: 'pH', when: 'in-process' }
  const phases = table.phases.map(({ letter, name }, phase): Phase => {
    const rows = table.rows.filter((row) => row.line !== null && row.phase === phase)
    const lines = rows.flatMap(({ row, line }): Line[] => {
      if (line === null || line.amount === null) return []
      const amount = amountOf(line.amount, idOf(`step ${row}`))
      return [{ id: idOf(`line ${row}`), materialId: materialIdOf(line), amount }]
    })
    return { letter, name, lines }
  })
  const procedure = stepsOf(phases, { vessel: vessel.id, check: check.id, idOf })
  const note = noteOf(table, (line) => materialOf(line) === null)
  const revision: Revision = {
    number: 1,
    ...(note === '' ? {} : { note }),
    usualSizeUg: head.usualSizeUg,
    phases: phases.filter(({ lines }) => lines.length > 0),
    procedure,
    specification: procedure.some(({ kind }) => kind === 'adjust') ? [check] : [],
    vessels: [vessel],
    preflight: [],
  }
  const { code, name, nickname, contact } = head
  const formula = { id: idOf('formula'), code, name, nickname, contact, revisions: [revision] }
  return { formula, materials: [...fresh.values()] }
}

/** A revision's note holds this much; what the sheet says beyond it is cut, and the cut is marked. */
const longestNote = 2000

function noteOf({ notes, rows }: ReadTable, isNew: (line: ReadLine) => boolean): string {
  const blends = rows.flatMap(({ line }) =>
    line !== null && isBlend(line.inci) && isNew(line) ? `INCI of ${line.name}: ${line.inci}` : [],
  )
  const text = [...notes, ...new Set(blends)].join('\n')
  return text.length > longestNote ? `${text.slice(0, longestNote - 1)}…` : text
}

/** The shares within a blend are not in the sheet and not guessed: its constituents stand in the note until filled in. */
function draftMaterial(id: string, { name, inci, function: does }: ReadLine): Material {
  const parts = inci === '' || isBlend(inci) ? [] : [{ name: inci, fraction: 1 }]
  return { id, name, inci: parts, function: does, draft: true }
}

const isBlend = (inci: string): boolean => /,|;|\(and\)| and |&|\+/i.test(inci)

function amountOf(amount: LineAmount, step: string): Amount {
  if (amount.kind !== 'qs') return amount
  return {
    kind: 'qs',
    portions: [{ step, rest: true }],
    ...(amount.heldBack === undefined ? {} : { heldBack: amount.heldBack }),
  }
}

interface Procedure {
  readonly vessel: string
  readonly check: string
  readonly idOf: Making['idOf']
}

function stepsOf(phases: readonly Phase[], { vessel, check, idOf }: Procedure): Step[] {
  const lines = phases.flatMap(({ letter, lines }) => lines.map((line) => ({ line, phase: letter })))
  const weigh = lines
    .filter(({ line }) => line.amount.kind !== 'as-needed')
    .map(({ line, phase }): Step => {
      const portion = line.amount.kind === 'qs' ? line.amount.portions[0]?.step : undefined
      return { id: portion ?? idOf(`step of ${line.id}`), kind: 'weigh', line: line.id, vessel, phase }
    })
  const adjust = lines
    .filter(({ line }) => line.amount.kind === 'as-needed')
    .map(
      ({ line, phase }): Step => ({
        id: idOf(`step of ${line.id}`),
        kind: 'adjust',
        property: 'pH',
        line: line.id,
        check,
        vessel,
        phase,
      }),
    )
  return [...weigh, ...adjust]
}
