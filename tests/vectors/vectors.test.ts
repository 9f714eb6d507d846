import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { afterAll, describe, expect, test } from 'vitest'
import { checkChargeBalance } from './charge-balance'
import { checkLabel } from './label'
import { checkMassBalance } from './mass-balance'
import { checkPhAdviser } from './ph-adviser'
import { checkRemedy } from './remedy'
import { checkStability } from './stability'
import { checkThermal } from './thermal'
import { checkWeighing } from './weighing'

/** A file of reference cases: what is given and what an independent reckoning expects, by subject. */
interface CaseFile {
  readonly subject: string
  readonly cases: readonly { readonly name: string; readonly given: unknown; readonly expect: unknown }[]
}

/** One adapter a subject: it maps a case to our functions, without arithmetic of its own, and compares. */
const adapters: Readonly<Record<string, (given: unknown, expected: unknown) => void>> = {
  weighing: checkWeighing,
  'mass-balance': checkMassBalance,
  remedy: checkRemedy,
  stability: checkStability,
  thermal: checkThermal,
  'ph-adviser': checkPhAdviser,
  'charge-balance': checkChargeBalance,
  label: checkLabel,
}

const folders = [join(import.meta.dirname, 'cases'), ...(process.env.VECTORS ? [process.env.VECTORS] : [])]

const files = folders.flatMap((folder) =>
  readdirSync(folder)
    .filter((name) => name.endsWith('.json'))
    .map((name) => ({
      name: join(folder, name),
      file: JSON.parse(readFileSync(join(folder, name), 'utf8')) as CaseFile,
    })),
)

const ran = new Map<string, number>()

describe.each(files)('$file.subject in $name', ({ file }) => {
  const { subject, cases } = file
  const check = adapters[subject]

  if (!check) {
    test('is a subject that is known', () => {
      expect(Object.keys(adapters)).toContain(subject)
    })
    return
  }

  test('has cases', () => {
    expect(cases.length).toBeGreaterThan(0)
  })

  test.each(cases)('$name', ({ given, expect: expected }) => {
    check(given, expected)
    ran.set(subject, (ran.get(subject) ?? 0) + 1)
  })
})

afterAll(() => {
  for (const [subject, count] of ran) console.log(`${subject}: ${count} cases`)
})
