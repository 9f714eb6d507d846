/** Folding 2,000 entries of 200 lines, and whether it grows with the log alone. */
import { openPage } from './chrome.ts'
import { longBatch } from './long-batch.ts'
import type { Site } from './site.ts'
import { against, median, rounded } from './statistics.ts'

const rounds = 40

export const benchFold = async (site: Site): Promise<object> => {
  const { events } = longBatch(10_000)
  const bench = await openPage()
  const { page } = bench
  await page.goto(site.sums)
  const timesOf = (count: number) =>
    page.evaluate(([log, times]) => window.timeFold(log, times), [events.slice(0, count), rounds] as const)
  const short = await timesOf(2_000)
  const long = await timesOf(10_000)
  await bench.close()
  const foldMs = median(short.foldMs)
  const growth = median(long.foldMs) / foldMs
  return {
    where: 'Chromium',
    fold2000Ms: against(foldMs, 10),
    fold10000Ms: rounded(median(long.foldMs)),
    // Five times as many entries cost at most five times as much, plan included, and some for the caches.
    growth: against(growth, 6),
    appendMs: rounded(median(short.appendMs)),
    appendAt10000Ms: rounded(median(long.appendMs)),
    appendToFold: rounded(median(short.appendMs) / foldMs, 3),
  }
}
