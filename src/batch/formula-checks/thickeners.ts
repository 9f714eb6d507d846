import type { FormulaCheck } from './check'
import { type Checked, type CheckedLine, tidy } from './lines'
import { hasPart, isFor, partOf, type Trait } from './textbook'
import type { Walked } from './walk'

/** From here on salts are known to thin: carbomers lose their swelling at once, most gums bear more. */
const saltFrom = { carbomer: 0.0005, gum: 0.005 } as const

const source = { kind: 'textbook' } as const

/** Gums and carbomers: hydrated, neutralised before PVP, and what salts do to them. */
export function thickenerChecks(checked: Checked): readonly FormulaCheck[] {
  const carbomers = checked.lines.filter(is('carbomer'))
  const gums = checked.lines.filter((line) => is('gum')(line) && !is('carbomer')(line))
  if (carbomers.length + gums.length === 0) return []
  const { walk } = checked
  return [
    ...saltChecks(checked, carbomers, saltFrom.carbomer),
    ...saltChecks(checked, gums, saltFrom.gum),
    ...carbomers.flatMap((line) => neutralisedChecks(checked, line, walk)),
    ...[...gums, ...carbomers].flatMap((line) => hydratedChecks(line, walk)),
  ]
}

const is =
  (trait: Trait) =>
  ({ material, share, most }: CheckedLine): boolean =>
    (share > 0 || most > 0) && hasPart(material, trait)

function saltChecks({ lines }: Checked, thickeners: readonly CheckedLine[], from: number): FormulaCheck[] {
  const [first] = thickeners
  const salty = lines.filter(is('electrolyte'))
  const share = tidy(salty.reduce((sum, line) => sum + line.share * partOf(line.material, 'electrolyte'), 0))
  if (!first || share < from) return []
  return [
    {
      code: 'THICKENER_WITH_SALT',
      severity: 'note',
      line: first.line.id,
      name: first.material.name,
      salts: [...new Set(salty.map(({ material }) => material.name))],
      figure: { value: share, unit: 'share' },
      limit: { max: from, unit: 'share' },
      source,
    },
  ]
}

const isBase = ({ material }: CheckedLine): boolean => hasPart(material, 'base') || isFor(material, 'neutralis')

const isBaseOrFilm = (line: CheckedLine | undefined): boolean =>
  line !== undefined && (isBase(line) || is('film')(line))

/** An acid polymer thickens once a base is in; PVP that comes before it takes the polymer out of solution. */
function neutralisedChecks(checked: Checked, line: CheckedLine, walk: readonly Walked[]): FormulaCheck[] {
  const about = { line: line.line.id, name: line.material.name, source }
  const figure = { value: line.share, unit: 'share' } as const
  if (!checked.lines.some(isBase)) return [{ code: 'CARBOMER_NOT_NEUTRALISED', severity: 'warn', figure, ...about }]
  for (const { step, after, entering } of walk) {
    // Only what comes in changes what is in; a long procedure is looked through once.
    const matters = entering.some((id) => id === line.line.id || isBaseOrFilm(checked.byId.get(id)))
    if (!matters || !after.lines.includes(line.line.id)) continue
    const inside = after.lines.flatMap((id) => checked.byId.get(id) ?? [])
    const film = inside.find(is('film'))
    if (inside.some(isBase)) return []
    if (film)
      return [
        { code: 'CARBOMER_BEFORE_PVP', severity: 'note', step: step.id, film: film.material.name, figure, ...about },
      ]
  }
  return []
}

function hydratedChecks({ line, material, share }: CheckedLine, walk: readonly Walked[]): FormulaCheck[] {
  const enters = walk.some(({ entering }) => entering.includes(line.id))
  const hydrates = walk.some(({ step, before }) => step.kind === 'hydrate' && before.lines.includes(line.id))
  if (!enters || hydrates) return []
  const figure = { value: share, unit: 'share' } as const
  return [{ code: 'GUM_NOT_HYDRATED', severity: 'warn', line: line.id, name: material.name, figure, source }]
}
