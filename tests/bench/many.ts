/**
 * Opening the app over thousands of batches, beside the bare opening of such a database and its newest 50 heads: both in a
 * browser that was just started, and from the moment at which the page's own script may run.
 */
import { rmSync } from 'node:fs'
import type { Page } from '@playwright/test'
import { summaryOf } from '../../src/batch/summary-of'
import { databaseName, databaseVersion, type HeadRow } from '../../src/store/schema'
import { openTestBench } from '../support/batch'
import { lotionHeader } from '../support/formulas'
import { newProfile, openPage } from './chrome.ts'
import { benchRecordsList } from './records-list.ts'
import type { Site } from './site.ts'
import { against, median, rounded } from './statistics.ts'

const batches = Number(process.env.BENCH_BATCHES ?? 5_000)
const entriesEach = Number(process.env.BENCH_ENTRIES ?? 100)
const inHand = 5
const rounds = 11

declare global {
  interface Window {
    openedAtMs: number
    startedAtMs: number
    /** Batches on the bench at that moment. */
    cardsAtStart: number
  }
}

export const benchMany = async (site: Site): Promise<object> => {
  const profile = newProfile()
  try {
    await fill(profile, site)
    const bareMs: number[] = []
    const appMs: number[] = []
    for (let round = 0; round <= rounds; round += 1) {
      const bare = await inFreshBrowser(profile, site, site.sums, openBare)
      const app = await inFreshBrowser(profile, site, site.app, openApp)
      // The first of each fills the caches of the disk.
      if (round > 0) {
        bareMs.push(bare)
        appMs.push(app)
      }
    }
    return {
      batches,
      entries: batches * entriesEach,
      bareMs: rounded(median(bareMs)),
      appMs: rounded(median(appMs)),
      appToBare: against(median(appMs) / median(bareMs), 1.3),
      records: await benchRecordsList(profile, site),
    }
  } finally {
    rmSync(profile, { recursive: true, force: true })
  }
}

/** Lets the app make its database, then fills that in runs, as no hand would in years. */
async function fill(profile: string, site: Site): Promise<void> {
  const bench = await openPage(profile)
  await bench.page.goto(site.app)
  await bench.page.locator('html[data-compared]').waitFor({ state: 'attached' })
  await bench.page.goto(site.sums)
  const summary = summaryOf(openTestBench(lotionHeader()).state)
  const head: HeadRow = {
    stream: '',
    family: 'batch',
    shelf: 'finished',
    touchedAt: '2026-11-24T10:00:00.000+00:00',
    order: 0,
    count: entriesEach,
    lamport: entriesEach,
    hash: 'f'.repeat(64),
    sum: '0123456789abcdef',
    summary,
  }
  for (let from = 0; from < batches; from += 100)
    await bench.page.evaluate(addBatches, {
      name: databaseName,
      from,
      to: Math.min(from + 100, batches),
      entriesEach,
      inHand,
      head,
    })
  await bench.close()
}

interface Wanted {
  readonly name: string
  readonly from: number
  readonly to: number
  readonly entriesEach: number
  readonly inHand: number
  readonly head: HeadRow
}

async function addBatches({ name, from, to, entriesEach: each, inHand: open, head }: Wanted): Promise<void> {
  const opening = indexedDB.open(name)
  await new Promise((resolve, reject) => {
    opening.onsuccess = resolve
    opening.onerror = reject
  })
  const tx = opening.result.transaction(['events', 'heads'], 'readwrite', { durability: 'relaxed' })
  for (let batch = from; batch < to; batch += 1) {
    const stream = `batch:many-${batch}`
    tx.objectStore('heads').put({
      ...head,
      stream,
      order: -(Date.parse(head.touchedAt) - batch * 3_600_000),
      shelf: batch < open ? 'in-hand' : 'finished',
      summary: { ...(head.summary as object), id: `many-${batch}` },
    })
    for (let n = 0; n < each; n += 1)
      tx.objectStore('events').put(
        {
          v: 1,
          stream,
          replica: 'tablet',
          n,
          id: `${stream}-${n}`,
          parents: [head.hash],
          lamport: n,
          kind: 'noted',
          at: head.touchedAt,
          by: 'RK',
          source: { kind: 'typed' },
          body: { text: 'Looked at the kettle; the lid is on, and the stirrer runs at 300 rpm.' },
          hash: head.hash,
        },
        [stream, 'tablet', n],
      )
  }
  await new Promise((resolve, reject) => {
    tx.oncomplete = resolve
    tx.onerror = reject
  })
  opening.result.close()
}

async function inFreshBrowser(
  profile: string,
  { sums }: Site,
  address: string,
  measure: (page: Page) => Promise<number>,
) {
  const bench = await openPage(profile)
  await bench.context.addInitScript(() => {
    const { open } = indexedDB
    window.openedAtMs = 0
    window.startedAtMs = 0
    new MutationObserver(() => {
      if (document.documentElement?.dataset.started === undefined || window.startedAtMs !== 0) return
      window.startedAtMs = performance.now()
      window.cardsAtStart = document.querySelectorAll('.bench-cards > li').length
    }).observe(document, { subtree: true, childList: true, attributeFilter: ['data-started'] })
    Object.defineProperty(indexedDB, 'open', {
      value(...args: [string, number]) {
        window.openedAtMs ||= performance.now()
        return open.apply(indexedDB, args)
      },
    })
  })
  await bench.context.addInitScript(openAtOnce, [databaseName, databaseVersion, sums] as const)
  await bench.page.goto(address)
  const ms = await measure(bench.page)
  await bench.close()
  return ms
}

const openBare = async (page: Page): Promise<number> => {
  await page.locator('html[data-bare]').waitFor({ state: 'attached' })
  return page.evaluate(() => Number(document.documentElement.dataset.bare))
}

/** In the page `at` alone, and no sooner than a script of its own could. */
function openAtOnce([name, version, at]: readonly [string, number, string]): void {
  if (!location.href.startsWith(at)) return
  addEventListener('DOMContentLoaded', async () => {
    const startMs = performance.now()
    const opening = indexedDB.open(name, version)
    await new Promise((resolve, reject) => {
      opening.onsuccess = resolve
      opening.onerror = reject
    })
    const index = opening.result.transaction('heads').objectStore('heads').index('by-family')
    const reading = index.getAll(IDBKeyRange.bound(['batch', -Infinity], ['batch', Infinity]), 50)
    await new Promise((resolve, reject) => {
      reading.onsuccess = resolve
      reading.onerror = reject
    })
    document.documentElement.dataset.bare = String(performance.now() - startMs)
  })
}

/** From the opening of the database to the bench with what is in hand. */
async function openApp(page: Page): Promise<number> {
  await page.locator('html[data-started]').waitFor({ state: 'attached' })
  const { ms, cards } = await page.evaluate(() => ({
    ms: window.startedAtMs - window.openedAtMs,
    cards: window.cardsAtStart,
  }))
  if (cards !== inHand) throw new Error(`The bench showed ${cards} of ${inHand} batches when the app had started.`)
  return ms
}
