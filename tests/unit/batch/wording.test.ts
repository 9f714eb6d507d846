import { describe, expect, test } from 'vitest'
import type { Check } from '../../../src/batch/formula'
import type { Step, StepKind } from '../../../src/batch/step'
import { askOf, lower, nameOfLine, titleOf, underOf } from '../../../src/batch/wording'
import { openTestBench } from '../../support/batch'
import { lotionHeader } from '../../support/formulas'
import { runUpTo } from '../../support/run'

const header = lotionHeader()
const step = (kind: StepKind): Step => ({ id: 's', vessel: 'main', phase: 'A', ...kind })
const title = (kind: StepKind): string => titleOf(step(kind), header)
const ask = (kind: StepKind): string => askOf(step(kind), header)

/** The same header with one check of its own. */
const checking = (check: Partial<Check>) => ({
  ...header,
  revision: {
    ...header.revision,
    specification: [{ id: 'own', property: 'other', label: 'Own', when: 'in-process', ...check } as const],
  },
})
const limits = (check: Partial<Check>): string => askOf(step({ kind: 'measure', check: 'own' }), checking(check))

describe('[W20] a step is called', () => {
  test('by its own title where it has one', () => {
    expect(titleOf({ ...step({ kind: 'clean' }), title: 'Wipe first' }, header)).toBe('Wipe first')
  })

  test.each<[StepKind, string]>([
    [{ kind: 'weigh', line: 'squalane' }, 'Squalane'],
    [{ kind: 'charge', cup: 'slurry', rate: 'stream' }, 'Tip in the slurry cup'],
    [{ kind: 'charge', cup: 'cup:b-squalane', rate: 'stream' }, 'Tip in squalane'],
    [{ kind: 'charge', cup: 'cup:b-melt', rate: 'stream' }, 'Tip in cup:b-melt'],
    [{ kind: 'combine', from: 'oil' }, 'Oil beaker into main beaker'],
    [{ kind: 'combine', from: 'pot' }, 'Pot into main beaker'],
    [{ kind: 'heat', targetC: 75 }, 'Heat'],
    [{ kind: 'cool', targetC: 40, by: 'air' }, 'Cool'],
    [{ kind: 'hold', minutes: 5 }, 'Hold'],
    [{ kind: 'hydrate', minutes: 20, shear: 'low' }, 'Hydrate'],
    [{ kind: 'mix', tool: 'propeller', minutes: 5 }, 'Mix'],
    [{ kind: 'deaerate', by: 'stand', minutes: 30 }, 'Let the air out'],
    [{ kind: 'measure', check: 'viscosity' }, 'Viscosity, rested'],
    [{ kind: 'measure', check: 'none-such' }, 'none-such'],
    [{ kind: 'adjust', property: 'pH', line: 'lactic-acid-10', check: 'ph' }, 'Adjust pH'],
    [{ kind: 'make-up', line: 'aqua' }, 'Make up to weight'],
    [{ kind: 'rest', hours: 24 }, 'Rest'],
    [{ kind: 'sample', jars: 3, eachUg: 1 }, 'Sample'],
    [{ kind: 'fill' }, 'Fill'],
    [{ kind: 'clean' }, 'Clean'],
    [{ kind: 'note', text: 'Gloves' }, 'Note'],
  ])('by what it does: %o', (kind, words) => {
    expect(title(kind)).toBe(words)
  })

  test('with the bench name of its material, and the id of a line that is not there', () => {
    expect(nameOfLine(header, 'shea-butter')).toBe('Shea butter')
    expect(nameOfLine(header, 'unplanned:1')).toBe('unplanned:1')
    expect(nameOfLine({ ...header, materials: [] }, 'shea-butter')).toBe('shea-butter')
  })

  test('with a small letter inside a sentence, but for a name that is written so', () => {
    expect(['Water', 'pH', 'PVP', 'C13 alkane'].map(lower)).toEqual(['water', 'pH', 'PVP', 'C13 alkane'])
  })
})

describe('[W20] a step asks', () => {
  test.each<[StepKind, string]>([
    [{ kind: 'weigh', line: 'squalane' }, ''],
    [{ kind: 'clean' }, ''],
    [{ kind: 'charge', cup: 'slurry', rate: 'sprinkle' }, 'sprinkle'],
    [{ kind: 'charge', cup: 'slurry', rate: 'stream', rinse: true }, 'stream, rinse the cup'],
    [{ kind: 'combine', from: 'oil' }, ''],
    [{ kind: 'combine', from: 'oil', bothAtLeastC: 70 }, 'both at 70 °C'],
    [{ kind: 'combine', from: 'oil', maxDifferenceC: 5 }, 'within 5 °C'],
    [{ kind: 'combine', from: 'oil', bothAtLeastC: 70, maxDifferenceC: 5 }, 'both at 70 °C, within 5 °C'],
    [{ kind: 'heat', targetC: 75 }, 'to 75 °C'],
    [{ kind: 'heat', targetC: 75, covered: true, holdMinutes: 10 }, 'to 75 °C, covered, hold 10 min'],
    [{ kind: 'cool', targetC: 40, by: 'bath' }, 'to 40 °C'],
    [{ kind: 'hold', minutes: 5 }, '5 min'],
    [{ kind: 'hydrate', minutes: 20, shear: 'low', startsWhen: 'lump-free' }, '20 min once lump-free'],
    [{ kind: 'mix', tool: 'propeller', minutes: 5 }, '5 min, propeller'],
    [
      { kind: 'mix', tool: 'rotor-stator', minutes: 3, rpm: { min: 3000, max: 5000 } },
      '3 min, rotor-stator, 3,000–5,000 rpm',
    ],
    [{ kind: 'mix', tool: 'propeller', minutes: 3, rpm: { min: 250, max: 250 } }, '3 min, propeller, 250 rpm'],
    [{ kind: 'deaerate', by: 'vacuum', minutes: 15 }, 'vacuum, 15 min'],
    [{ kind: 'deaerate', by: 'stand', minutes: 119 }, 'stand 119 min'],
    [{ kind: 'deaerate', by: 'stand', minutes: 120 }, 'stand 2 h'],
    [{ kind: 'measure', check: 'viscosity' }, '8,000–16,000 mPa·s'],
    [{ kind: 'measure', check: 'none-such' }, ''],
    [{ kind: 'adjust', property: 'pH', line: 'lactic-acid-10', check: 'ph' }, '4.9–5.3'],
    [{ kind: 'make-up', line: 'squalane' }, 'with squalane'],
    [{ kind: 'rest', hours: 24 }, '24 h'],
    [{ kind: 'sample', jars: 1, eachUg: 1 }, '1 jar'],
    [{ kind: 'sample', jars: 3, eachUg: 1 }, '3 jars'],
    [{ kind: 'fill' }, ''],
    [{ kind: 'fill', units: 12 }, '12 units'],
    [{ kind: 'note', text: 'Gloves on' }, 'Gloves on'],
  ])('in figures: %o', (kind, words) => {
    expect(ask(kind)).toBe(words)
  })

  test.each<[Partial<Check>, string]>([
    [{ expected: 'white, even' }, 'white, even'],
    [{}, ''],
    [{ limits: { max: 5.5 } }, 'at most 5.5'],
    [{ limits: { min: 1000 }, unit: 'mPa·s' }, 'at least 1,000 mPa·s'],
    [{ limits: { min: 999, max: 1234567 } }, '999–1,234,567'],
    [{ limits: { max: 0 } }, 'at most 0'],
  ])('for what its check allows: %o', (check, words) => {
    expect(limits(check)).toBe(words)
  })

  test('nothing more once it was left out: the ladder says why', () => {
    const bench = openTestBench(header)
    const under = (): string | undefined => {
      const planned = bench.state.plan.byId.get('b-homogenise')
      return planned && underOf(bench.state, planned)
    }
    runUpTo(bench, 'b-homogenise')
    expect(under()).toBe('3 min, rotor-stator, 3,000–5,000 rpm')
    bench.intend({ do: 'skip-step', step: 'b-homogenise', reason: 'the tool is broken' })
    expect(under()).toBe('skipped: the tool is broken')
  })
})
