/** The list of Records over thousands of finished batches: what it draws, and how quickly it answers to typing. */
import type { Page } from '@playwright/test'
import { databaseName } from '../../src/store/schema'
import { openPage } from './chrome.ts'
import type { Site } from './site.ts'
import { against, median, quantile, rounded } from './statistics.ts'

const letters = 20

export const benchRecordsList = async (profile: string, site: Site): Promise<object> => {
  const bench = await openPage(profile)
  try {
    await bench.page.goto(site.sums)
    const bareMs: number[] = []
    for (let round = 0; round < 5; round += 1) bareMs.push(await bench.page.evaluate(readAllHeads, databaseName))
    await bench.page.goto(`${site.app}#/records`)
    const rows = bench.page.getByRole('region', { name: 'Finished' }).getByRole('listitem')
    await rows.nth(49).waitFor()
    const firstMs = await typed(bench.page, 'nothing is called so')
    const keysMs: number[] = []
    for (let letter = 0; letter < letters; letter += 1)
      keysMs.push(await typed(bench.page, letter % 2 === 0 ? 'oat' : `none ${letter}`))
    await typed(bench.page, '')
    return {
      rowsDrawn: against(await rows.count(), 50),
      bareReadMs: rounded(median(bareMs)),
      firstSearchMs: rounded(firstMs),
      firstSearchToBare: against(firstMs / median(bareMs), 3),
      letterP95Ms: against(quantile(keysMs, 0.95), 100),
    }
  } finally {
    await bench.close()
  }
}

/** Types a whole text into the search at once, and answers the ms until the list that belongs to it is drawn. */
const typed = (page: Page, text: string): Promise<number> =>
  page.evaluate(async (value) => {
    const field = document.querySelector<HTMLInputElement>('.records-search input')
    if (field === null) throw new Error('There is no search.')
    const startMs = performance.now()
    field.value = value
    field.dispatchEvent(new Event('input', { bubbles: true }))
    const isEmpty = value !== '' && value !== 'oat'
    for (;;) {
      await new Promise((resolve) => requestAnimationFrame(resolve))
      const count = document.querySelectorAll('.records-shelf li').length
      const isReading = document.querySelector('.records-main')?.textContent.includes('Reading…')
      if (!isReading && (isEmpty ? count === 0 : count >= 50)) return performance.now() - startMs
    }
  }, text)

/** What no list can do without: all rows, read in one go. */
async function readAllHeads(name: string): Promise<number> {
  const opening = indexedDB.open(name)
  await new Promise((resolve, reject) => {
    opening.onsuccess = resolve
    opening.onerror = reject
  })
  const startMs = performance.now()
  const reading = opening.result.transaction('heads').objectStore('heads').getAll()
  await new Promise((resolve, reject) => {
    reading.onsuccess = resolve
    reading.onerror = reject
  })
  const ms = performance.now() - startMs
  opening.result.close()
  return ms
}
