/** The record on paper: both sizes, every page with its number and its batch, no row in two pieces. */
import { extractText, getDocumentProxy, getResolvedPDFJS } from 'unpdf'
import { takePicture } from '../support/picture'
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
  const captions = ['Dry gum, no lumps', 'Film on the wall', 'Filled jars', 'The column']
  const pictures = captions.map((caption, index) =>
    takePicture(bench, caption, 900, [675, 1200, 900, 2400][index] ?? 900),
  )
  await setOutBench(page, context)
  await bringIn(page, bench, ...pictures)
  await page.emulateMedia({ colorScheme: 'dark' })
  await page.goto(`./#/records/${bench.state.header.id}`)
  await page.getByRole('img', { name: /^Code of this record/ }).waitFor()
  await page.getByRole('img', { name: captions.at(-1) ?? '' }).waitFor()
  const rows = await page
    .locator('.paper-trail tbody tr')
    .evaluateAll((trs) =>
      trs.map((tr) => [...tr.querySelectorAll('td')].map((cell) => (cell.textContent ?? '').trim()).join(' ')),
    )
  expect(rows.length).toBe(bench.events.length)

  for (const format of ['A4', 'Letter'] as const) {
    const pdf = await getDocumentProxy(new Uint8Array(await page.pdf({ format })))
    const pages = await pagesOf(pdf)
    expect(pages.length, format).toBeGreaterThanOrEqual(4)
    expect(pages.length, format).toBeLessThanOrEqual(16)
    const drawn: string[] = []
    for (const [index, text] of pages.entries()) {
      expect(text, format).toContain(`page ${index + 1} of ${pages.length}`)
      expect(text, format).toContain('Batch record QW-LOT-01-041, QW-LOT-01 revision 3')
      expect(text, format).not.toMatch(/New revision from this batch|Save|Earlier|Later|Verify\b/)
      const shown = captions.filter((caption) => new RegExp(`${caption} \\d+ Nov 2026, .*MO`).test(text))
      expect(await imagesOn(pdf, index + 1), `${format}, page ${index + 1}: ${shown}`).toHaveLength(shown.length)
      drawn.push(...shown)
    }
    expect(drawn, format).toEqual(captions)
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
async function pagesOf(pdf: Pdf): Promise<readonly string[]> {
  const { text } = await extractText(pdf, { mergePages: false })
  return text.map(plain)
}

const plain = (text: string): string => text.replace(/\s+/g, ' ').trim()

// The reader of PDFs takes it for granted; Node has it from version 21 on.
if (!('transferToFixedLength' in ArrayBuffer.prototype))
  Object.defineProperty(ArrayBuffer.prototype, 'transferToFixedLength', {
    value(this: ArrayBuffer, length = this.byteLength) {
      return this.slice(0, length)
    },
  })

type Pdf = Awaited<ReturnType<typeof getDocumentProxy>>

/** What draws a picture on a page: one each, whole or in pieces. */
async function imagesOn(pdf: Pdf, number: number): Promise<readonly number[]> {
  const { OPS } = await getResolvedPDFJS()
  const { fnArray } = await (await pdf.getPage(number)).getOperatorList()
  return fnArray.filter((each) => each === OPS.paintImageXObject || each === OPS.paintInlineImageXObject)
}
