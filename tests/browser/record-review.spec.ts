/** A record in a reviewer's hands: what is out of the ordinary first, and the record as files that open anywhere. */
import { readFile } from 'node:fs/promises'
import type { Page } from '@playwright/test'
import { wholeBatch } from '../support/whole-batch'
import { expect, setOutBench, test } from './support/bench.ts'
import { bringIn } from './support/bring-in.ts'

const markup = '<img src=x onerror="document.title=1"><script>document.title=2</script> & more'

test('[B43] a reviewer is led to what is out of the ordinary; the record leaves as a page without a script and as a table', async ({
  page,
  context,
  browser,
}) => {
  const bench = wholeBatch({ viscosity: 5_000 })
  bench.intend({ do: 'note', text: markup })
  await setOutBench(page, context)
  await bringIn(page, bench)
  await page.goto(`./#/records/${bench.state.header.id}`)
  const paper = page.locator('.paper')
  await expect(paper.getByRole('heading', { name: 'Materials' })).toBeVisible()

  await page.getByRole('radio', { name: 'Out of the ordinary' }).check()
  await expect(paper.getByRole('heading', { name: 'Materials' })).toBeHidden()
  const found = paper.getByRole('region', { name: 'Out of the ordinary' }).getByRole('button')
  await expect(found).toContainText([/^Deviation 1/, /^Deviation 2/, /^Out of limits/, /^Went on/, /^Timer/, /^Struck/])
  await found.filter({ hasText: 'Out of limits' }).click()
  const place = paper.getByRole('row', { name: /^Viscosity, rested/ })
  await expect(place).toBeFocused()
  await expect(place).toBeInViewport()

  await page.getByRole('button', { name: 'Save or share' }).click()
  const html = await saved(page, /HTML/)
  expect(html.name).toBe('QW-LOT-01-041.html')
  expect(/<script|<link|https?:\/\/(?!www\.w3\.org)|url\((?!#)/i.exec(html.text)).toBeNull()
  const table = await saved(page, /decimal comma/)
  expect(table.text.split('\r\n')[0]).toMatch(/^\ufeffNo\.;Written;/)
  expect(table.text).toContain(';17,91;')
  expect((await saved(page, /decimal point/)).text).toContain(',17.91,')
  const batch = await saved(page, /^Save this batch/)
  expect(batch.name).toBe('QW-LOT-01-041.ndjson')

  const elsewhere = await browser.newContext({ offline: true })
  const reader = await elsewhere.newPage()
  const asked: string[] = []
  reader.on('request', (request) => asked.push(request.url()))
  reader.on('console', (message) => asked.push(message.text()))
  await reader.goto(`file://${html.path}`)
  await expect(reader).toHaveTitle('Batch record QW-LOT-01-041, QW-LOT-01 revision 3')
  await expect(reader.getByText(markup).first()).toBeVisible()
  const running = await reader
    .locator('*')
    .evaluateAll((all) => all.flatMap((each) => each.getAttributeNames().filter((name) => /^on|^style$/.test(name))))
  expect(running).toEqual([])
  await expect(reader.locator('.paper-facts')).toHaveCSS('display', 'grid')
  await expect(reader.locator('.qr')).toBeVisible()
  await expect(reader.locator('.paper-trail tbody tr')).toHaveCount(bench.events.length)
  for (const link of await reader.locator('a.paper-finding').all()) {
    const to = (await link.getAttribute('href')) ?? ''
    await expect(reader.locator(`[id="${to.slice(1)}"]`)).toHaveCount(1)
  }
  await reader.getByRole('link', { name: /^Out of limits/ }).click()
  await expect(reader.getByRole('row', { name: /^Viscosity, rested/ })).toBeInViewport()
  expect(asked).toEqual([expect.stringMatching(/^file:/)])
  await elsewhere.close()
})

async function saved(page: Page, button: RegExp): Promise<{ name: string; path: string; text: string }> {
  const coming = page.waitForEvent('download')
  await page.getByRole('button', { name: button }).click()
  const file = await coming
  const path = `${await file.path()}.html`
  await file.saveAs(path)
  return { name: file.suggestedFilename(), path, text: await readFile(path, 'utf8') }
}
