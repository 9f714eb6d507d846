import { describe, expect, test } from 'vitest'
import { recordOf } from '../../../../src/batch/record.ts'
import { openTestBench } from '../../../support/batch.ts'
import { lotionHeader } from '../../../support/formulas.ts'
import { runUpTo } from '../../../support/run.ts'
import { wholeBatch } from '../../../support/whole-batch.ts'

const whole = recordOf(wholeBatch().state)

describe('parts of a batch record', () => {
  test('[E66] yield stands at each stage: phases weighed, vessels emptied, made up, filled', () => {
    const { stages, mass } = whole
    expect(stages.filter(({ kind }) => kind === 'weighed').map(({ of }) => of)).toEqual(['B', 'A', 'C'])
    for (const { theoreticalUg, actualUg } of stages.filter(({ kind }) => kind === 'moved'))
      expect(theoreticalUg - actualUg).toBeLessThanOrEqual(mass.reconciliation.leftBehindUg)
    expect(stages.find(({ of, into }) => of === 'Oil beaker' && into === 'Main beaker')).toBeDefined()
    expect(stages.at(-1)).toMatchObject({ kind: 'filled', actualUg: mass.reconciliation.filledUg })
  })

  test('[E66] a phase that is not weighed whole has no yield yet', () => {
    const bench = openTestBench(lotionHeader())
    runUpTo(bench, 'b-cetearyl')
    expect(
      recordOf(bench.state)
        .stages.filter(({ kind }) => kind === 'weighed')
        .map(({ of }) => of),
    ).toEqual(['A'])
  })

  test('[E66] a struck weighing takes no part in any stage', () => {
    const phaseB = whole.stages.find(({ kind, of }) => kind === 'weighed' && of === 'B')
    const rows = whole.materials.filter(({ phase }) => phase === 'B')
    expect(phaseB?.actualUg).toBe(rows.reduce((sum, { actualUg }) => sum + actualUg, 0))
  })

  test('[E67] what was found out about a deviation stands with it, long after the batch was closed', () => {
    const { notes, deviations, closed } = whole
    const [found] = notes.filter(({ deviation }) => deviation !== undefined)
    expect(found).toMatchObject({ deviation: deviations.at(-1)?.id, by: 'MO', struck: false })
    expect(found?.atMs).toBeGreaterThan(closed?.atMs ?? 0)
  })

  test('[E67] nothing can be found out about a deviation that is not there', () => {
    const bench = openTestBench(lotionHeader())
    const about = { do: 'note', text: 'a scoop too many', deviation: 'nothing-of-that' } as const
    expect(bench.refusal(about)).toEqual({ code: 'NO_SUCH_DEVIATION' })
  })

  test('[E68] an entry names the instrument that it was read on', () => {
    const rows = whole.trail.filter(({ event }) => ['weighed', 'adjusted', 'made-up'].includes(event.kind))
    expect(new Set(rows.map(({ device }) => device))).toEqual(new Set(['Balance 1', 'Balance 2']))
    const ph = whole.trail.filter(({ event }) => event.kind === 'measured').map(({ device }) => device)
    expect(ph.filter((device) => device === 'pH meter')).toHaveLength(6)
  })

  test('[E68] lots, timers and curves stand with their sources', () => {
    expect(whole.lots.find(({ code }) => code === 'SQ-115')).toMatchObject({ supplier: 'Tolmin Botanicals' })
    const rinses = whole.materials.flatMap(({ more }) => more).filter(({ what }) => what === 'rinse')
    const takenUg = whole.lots.reduce((sum, { usedUg }) => sum + usedUg, 0)
    expect(takenUg + rinses.reduce((sum, { massUg }) => sum + massUg, 0)).toBe(whole.mass.reconciliation.addedUg)
    expect(whole.timers.find(({ label }) => label === 'Hydrate the gum')?.lateMs).toBeLessThan(-60_000)
    const [ph] = whole.adjustCurves
    expect(ph?.points.map(({ value }) => value)).toEqual([6.23, 5.85, 5.47, 5.1])
    expect(whole.heatCurves.map(({ name }) => name)).toEqual(['Main beaker', 'Oil beaker'])
  })
})
