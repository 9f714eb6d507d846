import type { Material } from '../../batch/catalogue'
import type { Formula, Line, Revision } from '../../batch/formula'
import { showNumber } from '../forms/show-fields'
import { ownHeadings } from './table/headings'
import { writeSeparated } from './table/write-text'

/**
 * The lines of a revision as a table (CSV): its name above, its note below. Steps and specification are not in it; those
 * are in the file of the whole formula. Bringing the table in again gives the same phases, materials and shares.
 */
export function formulaCsv(
  { name, code }: Formula,
  { number, phases, note }: Revision,
  materials: ReadonlyMap<string, Material>,
  mark: '.' | ',',
): Promise<string> {
  const lines = phases.flatMap((phase) =>
    phase.lines.map((line) => [phase.letter, phase.name, ...lineCells(line, materials.get(line.materialId), mark)]),
  )
  const notes = (note ?? '').split('\n').map((text) => [text])
  return writeSeparated([[name, `${code} r${number}`], [], [...ownHeadings], ...lines, [], ...notes], mark)
}

function lineCells(line: Line, material: Material | undefined, mark: '.' | ','): string[] {
  const inci = material?.inci.map(({ name }) => name).join(', ') ?? ''
  return [material?.name ?? line.materialId, inci, amountCell(line, mark), material?.function ?? '']
}

function amountCell({ amount }: Line, mark: '.' | ','): string {
  const percent = (fraction: number) => showNumber(fraction * 100, mark)
  switch (amount.kind) {
    case 'fraction':
      return percent(amount.fraction)
    case 'qs':
      return amount.heldBack === undefined ? 'q.s. to 100' : `q.s. to 100 (${percent(amount.heldBack)} held back)`
    case 'as-needed':
      return `${percent(amount.expected)} (${percent(amount.min)}–${percent(amount.max)})`
  }
}
