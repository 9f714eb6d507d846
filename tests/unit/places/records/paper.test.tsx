import { signal } from '@preact/signals'
import { beforeAll, describe, expect, test } from 'vitest'
import { type App, AppProvider } from '../../../../src/app/app.ts'
import { labelOf, portionsAsMade } from '../../../../src/batch/label-draft.ts'
import { recordOf } from '../../../../src/batch/record.ts'
import { stabilityOf } from '../../../../src/batch/stability.ts'
import { JarValues } from '../../../../src/places/records/jar-values.tsx'
import { RecordPaper } from '../../../../src/places/records/record-paper.tsx'
import type { Bench } from '../../../house/demonstration/bench.ts'
import { sectionsOnPaper } from '../../../support/paper-dom.ts'
import { wholeBatch } from '../../../support/whole-batch.ts'

/** A paper asks the app for no more than how figures are written, and the studio's name. */
const app = {
  settings: { value: signal({ studio: 'Quillwort Studio' }), decimalMark: signal('.') },
  calm: new Promise<void>(() => {}),
} as unknown as App

/** What 21 CFR 211.188, ISO 22716, 21 CFR 11.10(e) and ALCOA+ ask of a batch record, with where ours has it. */
const asked: readonly (readonly [what: string, section: string, found: readonly RegExp[]])[] = [
  [
    'the master formula, with its revision',
    'Master formula',
    [/QW-LOT-01 revision 3/, /Squalane.*\n?.*\d/, /Procedure/],
  ],
  ['its approval', 'Master formula', [/Approved by MO, .*2026/]],
  ['its specification', 'Master formula', [/Specification\n(?:.*\n)*Viscosity, rested: 8,000 to 16,000 mPa·s/]],
  [
    'which batch it is of',
    'Batch record\nQuillwort',
    [/QW-LOT-01-041/, /Size 500\.41 g, was 500\.00 g/, /Quillwort Studio/],
  ],
  ['dates and times of each step', 'Steps', [/\d\d:\d\d .*Heat/, /\d\d:\d\d .*Homogenise/]],
  [
    'the equipment used',
    'Equipment',
    [/Weighed on Balance 1 \(reads to 0\.001 g\): .*Squalane/, /Mixed with .*rotor/, /Main beaker tare 312\.46/],
  ],
  ['instruments checked before use', 'Equipment', [/Checked pH meter: buffers/, /20\.000 g read/]],
  ['the lot of every material', 'Materials', [/Squalane .*[A-Z]+-\d+/]],
  ['where each lot came from, and until when it is good', 'Lots used', [/Tolmin Botanicals/, /20\d\d/]],
  ['weights and measures used', 'Materials', [/17\.910/, /Put in, with rinses and make-up \d/]],
  ['in-process results', 'In process', [/pH .*4\.9–5\.3/]],
  ['checks against the specification', 'Results, rested', [/Viscosity, rested .*\n?.*8,000–16,000/]],
  ['timers, planned and actual', 'Timers', [/Hydrate the gum 20:00 \d\d:\d\d, \d\d:\d\d early/]],
  [
    'temperatures over time',
    'Readings and curves',
    [/Main beaker: temperature over time, \d+ readings/, /\d\d:\d\d 75\.\d/],
  ],
  ['the way to the pH', 'Readings and curves', [/pH over .* added, \d readings/]],
  ['yield at each stage', 'Yield at each stage', [/Phase A weighed/, /Oil beaker into Main beaker/, /Filled from .*%/]],
  ['reconciliation', 'Where it all went', [/In all, g, as put in/, /Unexplained/, /Yield: \d\d\.\d\d %/]],
  ['sampling', 'Sampling', [/89\.47 g from Main beaker, 3 jars, for rested checks/]],
  ['who did it and who checked it', 'Signatures', [/Performed by\nRK/, /Checked by\nJT/, /Decision\nAccept/]],
  ['a deviation, with its remedy and the reason', 'Deviations', [/Remedy chosen .*inside what the formula allows/i]],
  ['what was found out about it', 'Deviations', [/Looked into .*MO: The scoop held more/]],
  ['the label specimen', 'Label specimen', [/Batch QW-LOT-01-041, 4 units of/, /Ingredients: Aqua, /]],
  ['what was struck out, still legible', 'Materials', [/99\.800 struck .* RK, slip of the point/]],
  ['a door that was gone through with a reason', 'Steps', [/Went on all the same.*looked smooth already/]],
  [
    'every entry: when, by whom, from what, on what',
    'Every entry',
    [/typed “17\.910”, Balance 1/, /Opened QW-LOT-01-041/],
  ],
  ['that nothing was changed since', 'Verification', [/Every hash fits/, /sha-256 [0-9a-f]{8}( [0-9a-f]{8}){7}/]],
  ['what it is not', 'Verification', [/no certification is claimed/, /not a safety assessment/]],
]

let sections: readonly string[] = []

beforeAll(async () => {
  sections = await paperOf(wholeBatch())
})

function paperOf({ state }: Pick<Bench, 'state'>): Promise<readonly string[]> {
  const label = labelOf(portionsAsMade(state, new Map()), state.header.contact)
  return sectionsOnPaper(
    <AppProvider value={app}>
      <RecordPaper record={recordOf(state)} label={label} reviewed={false} onLead={() => undefined} />
    </AppProvider>,
  )
}

describe('[E65] a batch record has everything that is asked of one', () => {
  test.each(asked)('%s', (_what, section, found) => {
    const text = sections.find((each) => each.startsWith(section))
    expect(text, `no section ${section}`).toBeDefined()
    for (const words of found) expect(text, section).toMatch(words)
  })
})

test('[K44] kept jars stand in the record and in their summary with how they were read', async () => {
  const bench = wholeBatch()
  const measures = bench.state.header.revision.specification.filter(({ property }) => property === 'viscosity')
  const conditions = [{ id: '25c', label: '25 °C' }]
  const pulls = [{ day: 28, windowDays: 60 }]
  const startsAtMs = bench.state.lastAtMs
  bench.intend({ do: 'plan-stability', plan: { name: 'Four weeks', startsAtMs, conditions, pulls, measures } })
  const how = { spindle: '3', rpm: 12, torquePercent: 7 }
  const readings = [{ measure: 'viscosity', value: 10_900, how, sampleC: 30 }]
  bench.intend({ do: 'pull', condition: '25c', at: 28, readings })
  const read =
    /25 °C, week 4 .*10,900 mPa·s.*spindle 3, 12 rpm, torque 7 %, outside 10–100 %, 30 °C, not as asked: spindle 4, 25 °C/s
  expect((await paperOf(bench)).find((each) => each.startsWith('Kept jars'))).toMatch(read)
  const stability = stabilityOf(bench.state)
  if (stability === null) throw new Error('no plan')
  const summary = await sectionsOnPaper(
    <AppProvider value={app}>
      <JarValues stability={stability} />
    </AppProvider>,
  )
  expect(summary.join('\n')).toMatch(read)
})
