/** Drives the app as a person would: what counts as acknowledged is what the screen said, and nothing else. */
import type { Page } from '@playwright/test'

/** An entry whose row on the screen said `recorded` or `one copy`. */
export interface Acknowledged {
  readonly id: string
  readonly state: string
}

/** What the screen shows of the line that is weighed part by part. */
export interface Shown {
  readonly id: string | null
  /** Weighed so far, in hundredths of a gram. */
  readonly parts: number
}

const batchName = 'Lotion 013'
const lineName = 'Cetearyl alcohol'
/** Part weighings of 0.01 g of a 12.5 g line: more than a run of kills will ever make. */
const partText = '0.01'

/** Opens the app, and in it the demonstration's batch in hand at one of its lines. */
export const takeBatch = async (page: Page, origin: string): Promise<void> => {
  await page.goto(origin)
  await page.locator('html[data-started]').waitFor({ state: 'attached' })
  const offer = page.getByRole('button', { name: /Load the demonstration/ })
  const card = page.getByText(batchName).first()
  await offer.or(card).first().waitFor()
  if (await offer.isVisible()) await offer.click()
  await card.waitFor()
  const goOn = /Go on/
  await page
    .getByRole('link', { name: goOn })
    .or(page.getByRole('button', { name: goOn }))
    .first()
    .click()
  await page.locator('[data-place="run"]').waitFor()
  await rung(page).getByRole('button').click()
  await page.locator('input[name="reading"]').waitFor()
}

/** Weighs one part more and presses Record; answers when the screen acknowledges an entry that was not there before. */
export const recordNext = async (page: Page): Promise<Acknowledged> => {
  const before = await rung(page).getAttribute('data-entry')
  await page.locator('input[name="reading"]').fill(partText)
  await page.locator('[data-action="record"]').click()
  await rung(page)
    .and(acknowledged(page))
    .and(page.locator(`:not([data-entry="${before ?? ''}"])`))
    .waitFor()
  const [id, state] = await rung(page).evaluate((row) => [
    row.getAttribute('data-entry'),
    row.getAttribute('data-state'),
  ])
  if (id === null || id === undefined) throw new Error('The row lost its entry.')
  return { id, state: state ?? '' }
}

export const readShown = async (page: Page): Promise<Shown> => {
  const row = rung(page)
  const grams = /(\d+\.\d+) g of/.exec((await row.textContent()) ?? '')?.[1]
  return { id: await row.getAttribute('data-entry'), parts: grams === undefined ? 0 : Math.round(Number(grams) * 100) }
}

/** Ids of all entries in the database, and how often one of the copies had to be healed so far. */
export const readStored = (page: Page): Promise<{ readonly ids: readonly string[]; readonly healed: number }> =>
  // No function is named inside: the test runner would have it ask for a helper that the page does not have.
  page.evaluate(async () => {
    const opening = indexedDB.open('pannikin')
    await new Promise((resolve, reject) => {
      opening.onsuccess = resolve
      opening.onerror = () => reject(opening.error)
    })
    const reading: IDBRequest<{ id: string; kind: string }[]> = opening.result
      .transaction('events')
      .objectStore('events')
      .getAll()
    await new Promise((resolve, reject) => {
      reading.onsuccess = resolve
      reading.onerror = () => reject(reading.error)
    })
    opening.result.close()
    const events = reading.result
    return { ids: events.map((event) => event.id), healed: events.filter((event) => event.kind === 'healed').length }
  })

const rung = (page: Page) => page.getByRole('listitem').filter({ hasText: lineName }).first()

const acknowledged = (page: Page) => page.locator('[data-state="recorded"], [data-state="one-copy"]')
