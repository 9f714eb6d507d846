/**
 * From a trusted tap on Record to the frame in which its row says that both copies have it; beside it the same tap on a
 * page that does nothing but write both copies, since a slow disk or a busy machine slows both.
 */
import { type BenchPage, openKept, openPage, slowDown, tap } from './chrome.ts'
import { archiveOf, batchId, lineCount, longBatch, restsOf } from './long-batch.ts'
import type { Site } from './site.ts'
import { against, median, quantile, rounded } from './statistics.ts'

const entries = 2_000
/** All lines but the last: with that the ladder closes, and no row says anything. */
const taps = lineCount - 1
const slower = 4
const floorTaps = 60
/** The budget's 60 ms beside the 39 ms that writing alone took where the budget was set. */
const mostOfFloor = 60 / 39

interface Taps {
  /** Ms of each tap, from its pointer-up to the frame after. */
  readonly taken: number[]
  /** Ids of rows that said *recorded* before. */
  readonly known: Set<string>
  upAtMs: number
}

declare global {
  interface Window {
    taps: Taps
  }
}

export const benchRecord = async (site: Site): Promise<object> => {
  const log = longBatch(entries)
  const rests = restsOf(log)
  const file = archiveOf(log.events)
  const measure = async (delayMs: number, limitMs: number, count: number) => {
    const bench = await openPage()
    await bench.context.addInitScript(delayWrites, delayMs)
    await bringIn(bench, site, file)
    await watchTaps(bench)
    await slowDown(bench, slower)
    for (const { text } of rests.slice(0, count)) await weigh(bench, text)
    const taken = await bench.page.evaluate(() => window.taps.taken)
    await bench.close()
    if (taken.length !== count) throw new Error(`${taken.length} of ${count} taps were recorded.`)
    return { medianMs: rounded(median(taken)), p95Ms: against(quantile(taken, 0.95), limitMs), taps: count }
  }
  const floor = await floorOf(site)
  const asItIs = await measure(0, 60, taps)
  return {
    floor: { medianMs: rounded(median(floor)), p95Ms: rounded(quantile(floor, 0.95)), taps: floor.length },
    asItIs: { ...asItIs, medianToFloor: against(asItIs.medianMs / median(floor), mostOfFloor) },
    delayed20Ms: await measure(20, 120, 60),
  }
}

/** Ms of each tap on the page that only writes. */
async function floorOf(site: Site): Promise<readonly number[]> {
  const bench = await openPage()
  await bench.page.goto(site.floor)
  await bench.page.waitForTimeout(1_000)
  await watchTaps(bench)
  await slowDown(bench, slower)
  for (let done = 0; done < floorTaps; done += 1) await tapAndWait(bench, '#record')
  const taken = await bench.page.evaluate(() => window.taps.taken)
  await bench.close()
  return taken
}

/** The batch through the app's own door, then its run, with both copies compared. */
async function bringIn({ page, ...bench }: BenchPage, site: Site, buffer: Buffer): Promise<void> {
  await openKept({ page, ...bench }, `${site.app}#/setup/storage`)
  await page
    .getByLabel('Bring in a file')
    .setInputFiles({ name: 'batch.ndjson', mimeType: 'application/x-ndjson', buffer })
  await page.getByRole('button', { name: 'Bring it in' }).click()
  await page.getByText(`${entries} entries came in`).waitFor()
  await page.goto(`${site.app}#/run/${batchId}`)
  await page.reload()
  await page.locator('html[data-compared]').waitFor({ state: 'attached' })
  await page.locator('input[name="reading"]').waitFor()
  await page.waitForTimeout(2_000)
}

async function weigh(bench: BenchPage, text: string): Promise<void> {
  const { page } = bench
  await page.locator('input[name="reading"]').fill(text)
  await page.locator('[data-action="record"]:not([aria-disabled])').waitFor()
  await tapAndWait(bench, '[data-action="record"]')
}

async function tapAndWait(bench: BenchPage, selector: string): Promise<void> {
  const { page } = bench
  const before = await page.evaluate(() => window.taps.taken.length)
  await tap(bench, selector)
  // Nothing is asked of the page while it works.
  await page.waitForTimeout(200)
  for (let asked = 0; asked < 100; asked += 1) {
    if ((await page.evaluate(() => window.taps.taken.length)) > before) return
    await page.waitForTimeout(30)
  }
  throw new Error(`A tap on ${selector} was not followed by a row that says recorded.`)
}

/** No function in the page may have a name: the compiler of the tests would mark it with a helper that no page has. */
async function watchTaps({ page }: BenchPage): Promise<void> {
  await page.evaluate(() => {
    const rows = [...document.querySelectorAll('[data-entry][data-state="recorded"]')]
    window.taps = { taken: [], known: new Set(rows.map((row) => row.getAttribute('data-entry') ?? '')), upAtMs: 0 }
    addEventListener(
      'pointerup',
      (event) => {
        if (event.isTrusted) window.taps.upAtMs = event.timeStamp
      },
      true,
    )
    new MutationObserver((changes) => {
      for (const { target } of changes) {
        if (!(target instanceof Element) || target.getAttribute('data-state') !== 'recorded') continue
        const id = target.getAttribute('data-entry') ?? ''
        if (window.taps.upAtMs === 0 || window.taps.known.has(id)) continue
        window.taps.known.add(id)
        const { upAtMs } = window.taps
        window.taps.upAtMs = 0
        requestAnimationFrame(() => {
          const { port1, port2 } = new MessageChannel()
          port1.onmessage = () => window.taps.taken.push(performance.now() - upAtMs)
          port2.postMessage(null)
        })
      }
    }).observe(document.body, { subtree: true, attributes: true, attributeFilter: ['data-entry', 'data-state'] })
  })
}

/** A slow disk: what the database and the journal say comes so much later. */
function delayWrites(delayMs: number): void {
  if (delayMs === 0) return
  for (const [target, kind] of [
    [IDBTransaction.prototype, 'complete'],
    [Worker.prototype, 'message'],
  ] as const) {
    const { addEventListener } = EventTarget.prototype
    Object.defineProperty(target, 'addEventListener', {
      value(this: EventTarget, type: string, listener: EventListener, options?: AddEventListenerOptions) {
        const isLate = type === kind && !(this instanceof IDBTransaction && this.mode === 'readonly')
        addEventListener.call(
          this,
          type,
          isLate ? (event: Event) => void setTimeout(() => listener.call(this, event), delayMs) : listener,
          options,
        )
      },
    })
  }
}
