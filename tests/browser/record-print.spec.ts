/** The record on paper: both sizes, every page with its number and its batch, no row in two pieces. */
import { extractText, getDocumentProxy } from 'unpdf'
import { wholeBatch } from '../support/whole-batch'
import { expect, setOutBench, test } from './support/bench.ts'
import { bringIn } from './support/bring-in.ts'

test('[B42] a record prints whole on A4 and on Letter, with page numbers, its batch and the heads of tables on each page', async ({
  page,
  context,
}) => {
  const bench = wholeBatch()
  // Rows of several lines, of which some would stand across the end of a page.
  for (let count = 1; count <= 40; count++)
    bench.intend({ do: 'note', text: `Look ${count}. ${'White, even, and no grain under the glass. '.repeat(12)}` })
  await setOutBench(page, context)
  await bringIn(page, bench)
  await page.emulateMedia({ colorScheme: 'dark' })
  await page.goto(`./#/records/${bench.state.header.id}`)
  await page.getByRole('img', { name: /^Code of this record/ }).waitFor()
  const rows = await page
    .locator('.paper-trail tbody tr')
    .evaluateAll((trs) =>
      trs.map((tr) => [...tr.querySelectorAll('td')].map((cell) => (cell.textContent ?? '').trim()).join(' ')),
    )
  expect(rows.length).toBe(bench.events.length)

  for (const format of ['A4', 'Letter'] as const) {
    const pages = await pagesOf(await page.pdf({ format }))
    expect(pages.length, format).toBeGreaterThanOrEqual(4)
    expect(pages.length, format).toBeLessThanOrEqual(16)
    for (const [index, text] of pages.entries()) {
      expect(text, format).toContain(`page ${index + 1} of ${pages.length}`)
      expect(text, format).toContain('Batch record QW-LOT-01-041, QW-LOT-01 revision 3')
      expect(text, format).not.toMatch(/New revision from this batch|Save|Earlier|Later/)
    }
    const trail = pages.filter((text) => /\b[0-9a-f]{8}\b/.test(text) && / typed/.test(text))
    expect(trail.length, format).toBeGreaterThanOrEqual(2)
    for (const text of trail) expect(text, format).toMatch(/No\. Written By What From, on Hash/)
    for (const row of rows)
      expect(
        pages.filter((text) => text.includes(plain(row))),
        row,
      ).toHaveLength(1)
    expect(pages.join('\n')).toContain('Every hash fits the entry and the one before it.')
  }
})

/** The text of each page, white space taken together. */
async function pagesOf(pdf: Buffer): Promise<readonly string[]> {
  const { text } = await extractText(await getDocumentProxy(new Uint8Array(pdf)), { mergePages: false })
  return text.map(plain)
}

const plain = (text: string): string => text.replace(/\s+/g, ' ').trim()
