import type { BatchHeader } from './header'
import type { PlannedStep } from './plan'
import type { BatchState } from './state'
import type { Step } from './step'

/** What names are looked up in: a batch's header, or a revision with its materials before there is a batch. */
export type Names = Pick<BatchHeader, 'revision' | 'materials' | 'vessels'>

/** The bench name of a line's material. */
export function nameOfLine(header: Names, line: string): string {
  const known = names.get(header)
  if (known !== undefined) return known.get(line) ?? line
  const materials = new Map(header.materials.map(({ id, name }) => [id, name]))
  const lines = header.revision.phases.flatMap((phase) => phase.lines)
  names.set(header, new Map(lines.map(({ id, materialId }) => [id, materials.get(materialId) ?? id])))
  return nameOfLine(header, line)
}

/** Headers never change, and a ladder asks for every name each time it is drawn. */
const names = new WeakMap<Names, ReadonlyMap<string, string>>()

/** What a step is called in the ladder and on its card: its own title, else one made of what it does. */
export function titleOf(step: Step, header: Names): string {
  if (step.title !== undefined) return step.title
  const vessel = (id: string): string => header.vessels.find((each) => each.id === id)?.name.toLowerCase() ?? id
  switch (step.kind) {
    case 'weigh':
      return nameOfLine(header, step.line)
    case 'charge':
      return step.cup.startsWith('cup:')
        ? `Tip in ${nameOfCupLine(step.cup, header)}`
        : `Tip in the ${vessel(step.cup)}`
    case 'combine':
      return `${capital(vessel(step.from))} into ${vessel(step.vessel)}`
    case 'heat':
      return 'Heat'
    case 'cool':
      return 'Cool'
    case 'hold':
      return 'Hold'
    case 'hydrate':
      return 'Hydrate'
    case 'mix':
      return 'Mix'
    case 'deaerate':
      return 'Let the air out'
    case 'measure':
      return labelOfCheck(header, step.check)
    case 'adjust':
      return `Adjust ${step.property}`
    case 'make-up':
      return 'Make up to weight'
    case 'rest':
      return 'Rest'
    case 'sample':
      return 'Sample'
    case 'fill':
      return 'Fill'
    case 'clean':
      return 'Clean'
    case 'note':
      return 'Note'
  }
}

/** What a step asks for, in figures: "20 min once lump-free", "to 75 °C, covered". Masses are shown by who has the balance. */
export function askOf(step: Step, header: Names): string {
  switch (step.kind) {
    case 'weigh':
    case 'clean':
      return ''
    case 'charge':
      return step.rinse ? `${step.rate}, rinse the cup` : step.rate
    case 'combine':
      return [
        step.bothAtLeastC === undefined ? '' : `both at ${step.bothAtLeastC} °C`,
        step.maxDifferenceC === undefined ? '' : `within ${step.maxDifferenceC} °C`,
      ]
        .filter((part) => part !== '')
        .join(', ')
    case 'heat':
      return `to ${step.targetC} °C${step.covered ? ', covered' : ''}${step.holdMinutes ? `, hold ${step.holdMinutes} min` : ''}`
    case 'cool':
      return `to ${step.targetC} °C`
    case 'hold':
    case 'hydrate':
      return `${step.minutes} min${step.startsWhen ? ` once ${step.startsWhen}` : ''}`
    case 'mix':
      return `${step.minutes} min, ${step.tool}${step.rpm ? `, ${rangeText(step.rpm.min, step.rpm.max)} rpm` : ''}`
    case 'deaerate':
      return step.by === 'vacuum' ? `vacuum, ${minutesText(step.minutes)}` : `stand ${minutesText(step.minutes)}`
    case 'measure':
    case 'adjust':
      return limitsText(header, step.check)
    case 'make-up':
      return `with ${nameOfLine(header, step.line).toLowerCase()}`
    case 'rest':
      return `${step.hours} h`
    case 'sample':
      return `${step.jars} ${step.jars === 1 ? 'jar' : 'jars'}`
    case 'fill':
      return step.units === undefined ? '' : `${step.units} units`
    case 'note':
      return step.text
  }
}

/** The ladder's second line where it is not a mass: what is asked for, or where the step stands. */
export function underOf(state: BatchState, planned: PlannedStep): string {
  const step = state.steps.get(planned.id)
  if (step?.finished?.how === 'skipped') return `skipped: ${step.finished.note ?? ''}`
  return askOf(planned.step, state.header)
}

const labelOfCheck = (header: Names, id: string): string =>
  header.revision.specification.find((check) => check.id === id)?.label ?? id

function limitsText(header: Names, id: string): string {
  const check = header.revision.specification.find((each) => each.id === id)
  if (!check?.limits) return check?.expected ?? ''
  const { min, max } = check.limits
  const unit = check.unit === undefined ? '' : ` ${check.unit}`
  if (min !== undefined && max !== undefined) return `${rangeText(min, max)}${unit}`
  return min === undefined ? `at most ${number(max ?? 0)}${unit}` : `at least ${number(min)}${unit}`
}

const nameOfCupLine = (cup: string, header: Names): string => {
  const step = header.revision.procedure.find((each) => `cup:${each.id}` === cup)
  return step?.kind === 'weigh' ? lower(nameOfLine(header, step.line)) : cup
}

const rangeText = (min: number, max: number): string => (min === max ? number(min) : `${number(min)}–${number(max)}`)

/** Thousands are set apart by a comma from 1,000 on. */
const number = (value: number): string =>
  Math.abs(value) < 1000 ? String(value) : String(value).replace(/\B(?=(\d{3})+$)/g, ',')

const minutesText = (minutes: number): string => (minutes >= 120 ? `${minutes / 60} h` : `${minutes} min`)

/** "Water" in a sentence is "water"; "pH", "PVP" and "C13 alkane" stay as they are. */
export const lower = (text: string): string =>
  /^[A-Z][a-z]/.test(text) ? text.charAt(0).toLowerCase() + text.slice(1) : text

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1)
