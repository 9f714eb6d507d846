/** A warm start without a network, beside an empty Preact page that starts from the same kind of service worker. */
import { type BenchPage, openKept, openPage, slowDown } from './chrome.ts'
import type { Site } from './site.ts'
import { against, median, rounded } from './statistics.ts'

const rounds = 15

/** Ms since the navigation began. `readyMs` is the moment at which both copies are compared. */
interface Start {
  readonly shownMs: number
  readonly readyMs: number
}

declare global {
  interface Window {
    start: { shownMs: number; readyMs: number }
  }
}

export const benchStart = async (site: Site): Promise<object> => {
  const bench = await openPage()
  await watchStarts(bench)
  await openKept(bench, site.empty)
  const address = await setOut(bench, site)
  await bench.devtools.send('ServiceWorker.enable')
  await bench.context.setOffline(true)
  const at = async (slower: number): Promise<object> => {
    const empty: Start[] = []
    const app: Start[] = []
    for (let round = 0; round <= rounds; round += 1) {
      const pair = [
        await startOf(bench, site.empty, slower, 'shownMs'),
        await startOf(bench, address, slower, 'readyMs'),
      ]
      // The first of each fills the caches of the disk.
      if (round > 0) {
        empty.push(pair[0] as Start)
        app.push(pair[1] as Start)
      }
    }
    const emptyMs = median(empty.map(({ shownMs }) => shownMs))
    const shownMs = median(app.map(({ shownMs: each }) => each))
    const readyMs = median(app.map(({ readyMs: each }) => each))
    return {
      emptyMs: rounded(emptyMs),
      shownMs: rounded(shownMs),
      readyMs: rounded(readyMs),
      shownToEmpty: against(shownMs / emptyMs, 1.5),
      readyToEmpty: against(readyMs / emptyMs, 2),
    }
  }
  const result = { asItIs: await at(1), fourTimesSlower: await at(4) }
  await bench.close()
  return result
}

/** Loads the demonstration and takes up its lotion: the address of the step in hand. */
export async function setOut({ page }: BenchPage, site: Site): Promise<string> {
  await page.goto(site.app)
  await page.getByRole('button', { name: 'Load the demonstration' }).click()
  await page.getByRole('button', { name: /^Go on: Lotion/ }).click()
  await page.locator('[data-place="run"] #step-heading').waitFor()
  const address = page.url()
  await page.evaluate(() => navigator.serviceWorker.ready)
  await page.waitForTimeout(1_000)
  await page.goto(address)
  await page.reload()
  // House is kept some seconds after a start: the journal is merged and both copies are verified.
  await page.waitForTimeout(8_000)
  return address
}

/** In every page: when its step has been painted, and when the app says that both copies are compared. */
export async function watchStarts({ context }: BenchPage): Promise<void> {
  await context.addInitScript(() => {
    window.start = { shownMs: 0, readyMs: 0 }
    // No function in here may have a name: the compiler of the tests would mark it with a helper that no page has.
    new MutationObserver(() => {
      if (window.start.readyMs === 0 && document.documentElement?.dataset.compared !== undefined)
        window.start.readyMs = performance.now()
      if (window.start.shownMs !== 0 || !document.getElementById('step-heading')?.textContent) return
      window.start.shownMs = -1
      requestAnimationFrame(() => {
        const { port1, port2 } = new MessageChannel()
        port1.onmessage = () => {
          window.start.shownMs = performance.now()
        }
        port2.postMessage(null)
      })
    }).observe(document, {
      subtree: true,
      childList: true,
      characterData: true,
      attributes: true,
      attributeFilter: ['data-compared'],
    })
  })
}

export async function startOf(bench: BenchPage, address: string, slower: number, until: keyof Start): Promise<Start> {
  const { page, devtools } = bench
  await page.goto('about:blank')
  await devtools.send('ServiceWorker.stopAllWorkers')
  await slowDown(bench, slower)
  await page.goto(address, { waitUntil: 'commit' })
  // Asked late and seldom: a page that starts is not to be busy with answering.
  await page.waitForTimeout(600)
  for (let asked = 0; asked < 100; asked += 1) {
    await page.waitForTimeout(150)
    const start = await page.evaluate(() => window.start)
    if (start.shownMs <= 0 || start[until] <= 0) continue
    await slowDown(bench, 1)
    return start
  }
  throw new Error(`${address} did not start.`)
}
