import { createHash } from 'node:crypto'
import { readFileSync } from 'node:fs'
import { describe, expect, test } from 'vitest'
import { remediesFor } from '../../src/batch/deviation.ts'
import type { Event } from '../../src/batch/event.ts'
import { foldBatch } from '../../src/batch/fold.ts'
import { planBatch } from '../../src/batch/plan-batch.ts'
import { standingOf } from '../../src/batch/pulls.ts'
import { catalogueFileSchema } from '../../src/batch/schemas/catalogue-file.ts'
import { checkRevision, fractionsOf } from '../../src/batch/schemas/check-revision.ts'
import { readDocument } from '../../src/batch/schemas/read-document.ts'
import { pullsLeft, stabilityOf } from '../../src/batch/stability.ts'
import { shelfOf, summaryOf } from '../../src/batch/summary-of.ts'
import { verifyTrail } from '../../src/batch/verify-trail.ts'
import { readArchive } from '../../src/store/archive-read.ts'
import { demonstrationCatalogue as catalogue } from '../house/demonstration/catalogue.ts'
import { batchesText, catalogueText, demonstrationBatches, momentText } from '../house/demonstration/files.ts'
import { headerOf, newestOf } from '../house/demonstration/header.ts'
import { g } from '../house/demonstration/mass.ts'

const nameOf = (id: string) => catalogue.materials.find((material) => material.id === id)?.name ?? null

describe('the demonstration catalogue', () => {
  test('its file is what the modules say, to the byte', () => {
    expect(readFileSync('demo-data/catalogue.json', 'utf8')).toBe(catalogueText())
  })

  test('its file passes the schema that any import must pass, and nothing of it is left behind', () => {
    const { format: _format, version: _version, ...lists } = JSON.parse(catalogueText())
    const read = readDocument(catalogueFileSchema, lists)
    expect(read).toEqual({ ok: true, value: lists })
  })

  test('it has about thirty materials, forty lots, four balances and four formulas, each with an id of its own', () => {
    expect(catalogue.materials.length).toBeGreaterThanOrEqual(30)
    expect(catalogue.lots.length).toBeGreaterThanOrEqual(40)
    expect(catalogue.balances).toHaveLength(4)
    expect(catalogue.formulas).toHaveLength(4)
    for (const family of [catalogue.materials, catalogue.lots, catalogue.people, catalogue.vessels])
      expect(new Set(family.map(({ id }) => id)).size).toBe(family.length)
  })

  test('every lot is of a material that is there, and some must be called out', () => {
    for (const lot of catalogue.lots) expect(nameOf(lot.materialId), lot.code).not.toBeNull()
    expect(catalogue.lots.filter((lot) => (lot.expires ?? '') < '2026-11-24').map((lot) => lot.code)).toEqual([
      'TO-031',
    ])
    expect(catalogue.lots.filter((lot) => lot.status === 'quarantine')).toHaveLength(1)
  })

  test.each(catalogue.formulas.map((formula) => [formula.code, formula] as const))(
    '%s adds up to 100 % and has nothing against it',
    (_code, formula) => {
      const revision = newestOf(formula)
      const { stated, qs } = fractionsOf(revision.phases.flatMap((phase) => phase.lines))
      expect(stated + (qs ?? 0)).toBeCloseTo(1, 12)
      expect(checkRevision(revision, nameOf)).toEqual([])
    },
  )

  test.each(
    catalogue.formulas.flatMap((formula) =>
      [newestOf(formula).usualSizeUg, g(250), g(2000)].flatMap((sizeUg) =>
        (['as-you-go', 'weigh-up-first'] as const).map((mode) => [formula.code, sizeUg / 1e6, mode, formula] as const),
      ),
    ),
  )('%s can be planned at %d g, weighing %s', (_code, grams, mode, formula) => {
    const sizeUg = g(grams)
    const plan = planBatch(headerOf(formula, { id: 'batch', number: 1, sizeUg, mode, on: '2026-11-24' }))
    if (!plan.ok) throw new Error(JSON.stringify(plan.refusal))
    const targets = [...plan.value.lines.values()].reduce((sum, line) => sum + line.targetUg, 0)
    expect(targets).toBe(sizeUg)
    expect(plan.value.heldBackUg).toBeGreaterThan(0)
    for (const line of plan.value.lines.values()) expect(line.lots.length, line.line.id).toBeGreaterThan(0)
  })
})

describe('the demonstration batches', () => {
  const batches = demonstrationBatches()
  const [headerLine = '', ...lines] = readFileSync('demo-data/batches.ndjson', 'utf8').trimEnd().split('\n')
  const stored = lines.map((text) => JSON.parse(text) as Event)
  const folded = batches.map(({ state }) => foldBatch(stored.filter((event) => event.stream === state.stream)))

  test('driving the app again gives the same files, to the byte', () => {
    expect(batchesText(batches)).toBe(readFileSync('demo-data/batches.ndjson', 'utf8'))
    expect(momentText(batches)).toBe(readFileSync('demo-data/moment.json', 'utf8'))
  })

  test('the archive says how many entries and streams it holds, and their checksum', () => {
    const entries = lines.map((text) => `${text}\n`).join('')
    expect(JSON.parse(headerLine)).toMatchObject({
      format: 'pannikin',
      events: stored.length,
      streams: new Set(stored.map((event) => event.stream)).size,
      sha256: createHash('sha256').update(entries).digest('hex'),
    })
  })

  test('the store reads the archive through the door that any file must pass', async () => {
    const streams: string[] = []
    const file = new Blob([readFileSync('demo-data/batches.ndjson')])
    await readArchive(file, async (stream) => void streams.push(stream))
    expect(streams).toHaveLength(14)
  })

  test('every batch folds from the file with no doubt, and its trail is intact', () => {
    expect(folded.length).toBe(14)
    for (const state of folded) {
      expect(state.doubts, state.header.code).toEqual([])
      expect(state.unknownKinds.size).toBe(0)
      expect(verifyTrail(state.entries.map((entry) => entry.event)).intact, state.header.code).toBe(true)
    }
  })

  test('a dozen are finished over twelve weeks, one of them on hold for its rested checks, and two are in hand', () => {
    const summaries = folded.map(summaryOf)
    expect(summaries.map((summary) => shelfOf(summary))).toEqual([
      'finished',
      ...Array(11).fill('follow-up'),
      ...Array(2).fill('in-hand'),
    ])
    expect(summaries.filter((summary) => summary.decision === 'hold')).toHaveLength(1)
    expect(summaries.every((summary) => summary.timers.length === 0)).toBe(true)
  })

  test('[K34] some jars were missed, some are late and some due, and all others were pulled in time', () => {
    const nowMs = Date.parse(JSON.parse(momentText(batches)).halfway)
    const open = folded.flatMap((state) =>
      pullsLeft(state).map((pull) => [state.header.code, pull.jar, standingOf(pull, nowMs)].join(': ')),
    )
    expect(open.filter((each) => !each.endsWith('to come'))).toEqual([
      'QW-LOT-01-004: 25 °C, week 4: missed',
      'QW-LOT-01-004: 40 °C, week 4: missed',
      'QW-LOT-01-005: 25 °C, week 8: due',
      'QW-LOT-01-005: 40 °C, week 8: due',
      'QW-LOT-01-008: 25 °C, week 4: late',
      'QW-LOT-01-008: 40 °C, week 4: late',
      'QW-LOT-01-011: 25 °C, week 2: due',
      'QW-LOT-01-011: 40 °C, week 2: due',
    ])
    const read = folded.flatMap((state) => stabilityOf(state)?.pulls ?? []).filter(({ left }) => left.length === 0)
    expect(read).toHaveLength(66)
    expect(read.every(({ lateDays }) => lateDays === 0)).toBe(true)
  })

  test('the batch half-way has one open deviation, and a way on that brings every line back into its limits', () => {
    const halfway = folded.at(-1)
    if (!halfway) throw new Error('no batch half-way')
    const open = [...halfway.deviations.values()].filter((deviation) => !deviation.settled)
    expect(open).toHaveLength(1)
    const offers = remediesFor(halfway, open[0]?.id ?? '')
    expect(offers.map((offer) => offer.remedy)).toEqual(['scale', 'extra', 'cost', 'discard', 'qs', 'accept'])
    expect(offers[0]).toMatchObject({ feasible: true, totalUg: g(532) })
    expect(offers[0]?.rows.some((row) => row.breaks)).toBe(false)
  })

  test('the oldest batch has pulls of twelve weeks, and one batch drifts towards its limit', () => {
    const pulls = folded[0]?.measurements.filter((each) => each.body.conditions?.endsWith('week 12')) ?? []
    expect(pulls.map((each) => each.body.label)).toContain('Viscosity, rested')
    const thin = folded[8]?.measurements.filter((each) => each.body.conditions === '40 °C, week 4') ?? []
    expect(thin.find((each) => each.body.property === 'viscosity')?.body.value).toBeLessThan(8000)
  })
})
