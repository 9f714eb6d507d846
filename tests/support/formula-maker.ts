import type { Balance, Material } from '../../src/batch/catalogue'
import type { Check, Line, Revision } from '../../src/batch/formula'
import { checksOf, type FormulaCheck } from '../../src/batch/formula-checks'
import type { Step } from '../../src/batch/step'

/** A material of one constituent, which states nothing else than what is given. */
export const material = (id: string, more: Partial<Material> = {}): Material => ({
  id,
  name: id,
  inci: [{ name: id, fraction: 1 }],
  function: '',
  ...more,
})

export const water = material('water', { inci: [{ name: 'Aqua', fraction: 1 }] })

export const share = (id: string, percent: number, more: Partial<Line> = {}): Line => ({
  id,
  materialId: id,
  amount: { kind: 'fraction', fraction: Number((percent / 100).toFixed(12)) },
  ...more,
})

export const qs = (id = 'water'): Line => ({ id, materialId: id, amount: { kind: 'qs', portions: [] } })

export const step = (id: string, kind: object, vessel = 'main'): Step => ({ id, vessel, phase: 'A', ...kind }) as Step

export const weigh = (line: string, vessel = 'main'): Step => step(`weigh-${line}`, { kind: 'weigh', line }, vessel)

export const pH = (min: number, max: number): Check => ({
  id: 'ph',
  property: 'pH',
  label: 'pH',
  limits: { min, max },
  when: 'after-rest',
})

/** A revision of 500 g over one phase, weighed in the order of its lines where no procedure is given. */
export const revision = (lines: readonly Line[], more: Partial<Revision> = {}): Revision => ({
  number: 1,
  usualSizeUg: 500_000_000,
  phases: [{ letter: 'A', name: 'All', lines }],
  procedure: lines.map(({ id }) => weigh(id)),
  specification: [],
  vessels: [{ id: 'main', name: 'Main beaker', kind: 'vessel' }],
  preflight: [],
  ...more,
})

/** Weighs to 0.001 g, good to ±1 % from 0.2 g. */
export const fineBalance: Balance = {
  id: 'fine',
  name: 'Balance 1',
  stepUg: 1_000,
  capacityUg: 220_000_000,
  repeatabilityUg: 1_000,
}

interface Asked {
  readonly contact?: 'leave-on' | 'rinse-off'
  readonly balances?: readonly Balance[]
  readonly sizeUg?: number
}

export function checksFor(of: Revision, materials: readonly Material[], asked: Asked = {}): readonly FormulaCheck[] {
  const { contact = 'leave-on', balances = [fineBalance], sizeUg } = asked
  const context = { balances, ...(sizeUg === undefined ? {} : { sizeUg }) }
  return checksOf(of, { contact }, new Map([water, ...materials].map((each) => [each.id, each])), context)
}

/** The codes said, without those that only tell which data nobody wrote down. */
export const codesFor = (...asked: Parameters<typeof checksFor>): readonly string[] =>
  checksFor(...asked)
    .filter(({ code }) => code !== 'DATA_MISSING')
    .map(({ code }) => code)

export const found = (checks: readonly FormulaCheck[], code: FormulaCheck['code']): FormulaCheck => {
  const check = checks.find((each) => each.code === code)
  if (!check) throw new Error(`${code} was not said: ${checks.map((each) => each.code).join(', ')}`)
  return check
}
