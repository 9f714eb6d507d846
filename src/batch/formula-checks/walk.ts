import type { Revision } from '../formula'
import type { Step } from '../step'

/** What stands in one vessel at some moment of the procedure. */
interface Standing {
  readonly temperatureC: number
  /** Whether something heated it, or what went into it, and nothing cooled it since. */
  readonly heated: boolean
  /** Ids of the lines in it, in the order in which they came. */
  readonly lines: readonly string[]
}

/** One step as the procedure goes: what stood in its vessel before and after it, and what came in with it. */
export interface Walked {
  readonly step: Step
  readonly index: number
  readonly before: Standing
  readonly after: Standing
  /** Lines that come into the step's vessel with this step. */
  readonly entering: readonly string[]
}

/** What a bench has where nothing heats: as the pharmacopoeia calls room temperature, 20–25 °C. */
const roomC = 25

const empty: Standing = { temperatureC: roomC, heated: false, lines: [] }

/**
 * Follows the procedure in its order, vessel by vessel, as if every heating and cooling reached its figure. Two
 * vessels combined end at their mean by mass (equal specific heats); cold additions are not reckoned to cool.
 */
export function walkOf(
  { procedure }: Pick<Revision, 'procedure'>,
  byId: ReadonlyMap<string, { readonly share: number }>,
): readonly Walked[] {
  const vessels = new Map<string, Standing>()
  const massOf = (lines: readonly string[]): number => lines.reduce((sum, id) => sum + (byId.get(id)?.share ?? 0), 0)
  return procedure.map((step, index) => {
    const before = vessels.get(step.vessel) ?? empty
    const from = emptiedBy(step)
    const poured = from === null ? null : (vessels.get(from) ?? empty)
    const entering = poured?.lines ?? lineOf(step)
    const after = {
      ...warmed(before, step, poured, massOf),
      lines: [...before.lines, ...entering.filter((id) => !before.lines.includes(id))],
    }
    vessels.set(step.vessel, after)
    if (from !== null) vessels.set(from, empty)
    return { step, index, before, after, entering }
  })
}

function emptiedBy(step: Step): string | null {
  if (step.kind === 'charge') return step.cup
  return step.kind === 'combine' ? step.from : null
}

const lineOf = (step: Step): readonly string[] =>
  step.kind === 'weigh' || step.kind === 'adjust' || step.kind === 'make-up' ? [step.line] : []

type Warmth = Pick<Standing, 'temperatureC' | 'heated'>

function warmed(
  before: Standing,
  step: Step,
  poured: Standing | null,
  massOf: (lines: readonly string[]) => number,
): Warmth {
  switch (step.kind) {
    case 'heat':
      return { temperatureC: step.targetC, heated: step.targetC > roomC }
    case 'cool':
      return { temperatureC: Math.min(step.targetC, before.temperatureC), heated: false }
    case 'combine': {
      if (poured === null || poured.lines.length === 0) return before
      if (before.lines.length === 0) return poured
      const [own, theirs] = [massOf(before.lines), massOf(poured.lines)]
      const mean = (before.temperatureC * own + poured.temperatureC * theirs) / (own + theirs)
      const temperatureC = own + theirs > 0 ? mean : before.temperatureC
      return { temperatureC, heated: before.heated || (poured.heated && temperatureC > roomC) }
    }
    default:
      return before
  }
}
