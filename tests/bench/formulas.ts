/** What a formula of 200 lines costs each time a key is pressed in its editor, against one of 50. */
import type { Material } from '../../src/batch/catalogue'
import type { Line } from '../../src/batch/formula'
import type { Step } from '../../src/batch/step'
import { demonstrationCatalogue } from '../house/demonstration/catalogue'
import { openPage } from './chrome.ts'
import type { Site } from './site.ts'
import { against, median, quantile, rounded } from './statistics.ts'
import type { TimedFormula } from './sums/formulas.ts'

const rounds = 60

export const benchFormulas = async (site: Site): Promise<object> => {
  const bench = await openPage()
  await bench.page.goto(site.sums)
  const timed = await bench.page.evaluate(
    ([formulas, balances, times]) => window.timeChecks(formulas, balances, times),
    [[longFormula(50), longFormula(200)], demonstrationCatalogue.balances, rounds] as const,
  )
  await bench.close()
  const long = timed.map(([, ms = Number.NaN]) => ms)
  const growth = timed.map(([short = Number.NaN, ms = Number.NaN]) => ms / short)
  return {
    where: 'Chromium',
    lines: 200,
    checks200Ms: against(median(long), 5),
    p95Ms: rounded(quantile(long, 0.95)),
    // Four times as many lines cost at most eight times as much: nothing in it looks at every pair of lines.
    growth: against(median(growth), 8),
  }
}

/** Every material of the demonstration in turn, each line a material of its own, weighed, heated and cooled by tens. */
function longFormula(count: number): TimedFormula {
  const known = demonstrationCatalogue.materials
  const [water] = known
  const [model] = demonstrationCatalogue.formulas
  const [revision] = model.revisions
  if (!water || !revision) throw new Error('The demonstration has water and a lotion')
  const materials = Array.from({ length: count - 1 }, (_, index): Material => {
    const like = known[1 + (index % (known.length - 1))] ?? water
    return { ...like, id: `${like.id}-${index}`, name: `${like.name} ${index}` }
  })
  const lines = materials.map(
    ({ id }): Line => ({ id, materialId: id, amount: { kind: 'fraction', fraction: 0.5 / count } }),
  )
  const qs: Line = { id: 'water', materialId: water.id, amount: { kind: 'qs', portions: [] } }
  const procedure = [qs, ...lines].flatMap(({ id }, index): Step[] => {
    const weigh: Step = { id: `weigh-${id}`, kind: 'weigh', line: id, vessel: 'main', phase: 'A' }
    if (index % 20 === 10) return [weigh, { id: `heat-${id}`, kind: 'heat', targetC: 75, vessel: 'main', phase: 'A' }]
    if (index % 20 === 0)
      return [{ id: `cool-${id}`, kind: 'cool', targetC: 30, by: 'air', vessel: 'main', phase: 'A' }, weigh]
    return [weigh]
  })
  return {
    materials: [water, ...materials],
    formula: {
      ...model,
      revisions: [{ ...revision, phases: [{ letter: 'A', name: 'All', lines: [qs, ...lines] }], procedure }],
    },
  }
}
