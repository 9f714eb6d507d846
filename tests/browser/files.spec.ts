/** What leaves the tablet as a file comes back whole from it, or not at all. */
import { readFileSync } from 'node:fs'
import type { Browser, Page } from '@playwright/test'
import { openApp } from './support/app.ts'
import { expect, setOutBench, test } from './support/bench.ts'
import { watchContext } from './support/guard.ts'

test('[B21] everything saved on one tablet stands on another after its file came in, and twice is no harm', async ({
  page,
  context,
  browser,
}) => {
  await setOutBench(page, context)
  const saved = await saveEverything(page)
  const here = await read(page)
  expect(here.batches).toHaveLength(14)
  expect(here.formulas).toHaveLength(4)

  await onAnotherTablet(browser, page, async (other) => {
    await bring(other, 'everything.ndjson', saved)
    await expect(said(other)).toContainText(/everything.ndjson is whole: \d+ things, \d+ entries new here\./)
    expect(await entriesIn(other), 'nothing comes in before it was looked at').toBe(0)
    await other.getByRole('button', { name: 'Bring it in' }).click()
    await expect(said(other)).toContainText(/\d+ entries came in from everything.ndjson/)
    expect(await read(other)).toEqual(here)

    const entries = await entriesIn(other)
    await bring(other, 'again.ndjson', saved)
    await expect(said(other)).toContainText(/, 0 entries new here, \d+ here already\./)
    await expect(other.getByRole('button', { name: 'Bring it in' })).toBeDisabled()
    await other.getByRole('button', { name: 'Leave it' }).click()
    expect(await entriesIn(other)).toBe(entries)
    await other.reload()
    expect(await read(other), 'it was kept, not only shown').toEqual(here)
  })
})

test('[B22] of a changed, a cut and a foreign file nothing comes in, and the reason is said', async ({
  page,
  context,
  browser,
}) => {
  await setOutBench(page, context)
  const sound = (await saveEverything(page)).toString()
  const changed = sound.replace('"massUg":', '"massUg":1')
  expect(changed).not.toBe(sound)
  const lines = sound.split('\n')
  const cut = lines.slice(0, lines.length / 2).join('\n')
  const torn = sound.slice(0, sound.length / 2)

  await onAnotherTablet(browser, page, async (other) => {
    const before = await entriesIn(other)
    for (const [name, text, sentence] of [
      [
        'changed.ndjson',
        changed,
        /The file is damaged at line \d+: entry \d+ of \S+ \(\S+\) is not as it was written\. Nothing was brought in\./,
      ],
      ['cut.ndjson', cut, /The file is cut short: \d+ of \d+ entries are there\. Nothing was brought in\./],
      ['torn.ndjson', torn, /Nothing was brought in\./],
      ['foreign.json', '{"name":"a list of something else","rows":[1,2,3]}', /That is not a file of this app\./],
      ['picture.json', '\u0089PNG\r\n\u001a\n', /That is not a file of this app\./],
      ['empty.ndjson', '', /That is not a file of this app\./],
    ] as const) {
      await bring(other, name, Buffer.from(text))
      await expect(said(other), name).toContainText(sentence)
      await expect(other.getByRole('button', { name: 'Bring it in' }), name).toHaveCount(0)
      expect(await entriesIn(other), name).toBe(before)
      await other.getByRole('button', { name: 'Leave it' }).click()
    }
    // After all of that the sound one still can.
    await bring(other, 'everything.ndjson', Buffer.from(sound))
    await expect(said(other)).toContainText('everything.ndjson is whole')
  })
})

/** A browser that has never seen the app, in Setup where files come in; watched like every other. */
async function onAnotherTablet(browser: Browser, first: Page, work: (page: Page) => Promise<void>): Promise<void> {
  const { origin } = new URL(first.url())
  const context = await browser.newContext({ baseURL: `${origin}/`, locale: 'en-GB', timezoneId: 'Europe/London' })
  const wrongs = watchContext(context, origin)
  const page = await context.newPage()
  await openApp(page, '#/setup/storage')
  await work(page)
  await context.close()
  expect(wrongs).toEqual([])
}

async function saveEverything(page: Page): Promise<Buffer> {
  await page.goto('./#/records')
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('button', { name: 'Save everything' }).click(),
  ])
  expect(download.suggestedFilename()).toBe('pannikin-everything-2026-11-24.ndjson')
  return readFileSync(await download.path())
}

async function bring(page: Page, name: string, buffer: Buffer): Promise<void> {
  await page.goto('./#/setup/storage')
  await page.getByLabel('Bring in a file').setInputFiles({ name, mimeType: 'application/x-ndjson', buffer })
}

/** What is said about the file that was taken. */
const said = (page: Page) => page.locator('.bring')

/** What a person would compare: every batch and formula of the lists, and the whole record of the batch in hand. */
async function read(page: Page) {
  await page.goto('./#/records')
  const rows = page.getByRole('region', { name: /^(In hand|Finished)$/ }).getByRole('listitem')
  await rows.nth(13).waitFor()
  const batches = await rows.allTextContents()
  await page.goto('./#/formulas')
  const cards = page.getByRole('list', { name: 'Formulas' }).getByRole('listitem')
  await cards.first().waitFor()
  const formulas = await cards.allTextContents()
  await page.goto('./#/records')
  await rows.filter({ hasText: '013' }).getByRole('link').first().click()
  const paper = page.getByRole('article')
  await expect(paper).toContainText('Every hash fits')
  return { batches, formulas, paper: await paper.textContent() }
}

/** How many entries the database holds. */
const entriesIn = (page: Page): Promise<number> =>
  page.evaluate(async () => {
    const opening = indexedDB.open('pannikin')
    await new Promise((resolve, reject) => {
      opening.onsuccess = resolve
      opening.onerror = reject
    })
    const counting = opening.result.transaction('events').objectStore('events').count()
    await new Promise((resolve, reject) => {
      counting.onsuccess = resolve
      counting.onerror = reject
    })
    opening.result.close()
    return counting.result
  })
