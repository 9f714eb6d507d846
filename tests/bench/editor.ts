/** From a trusted key in a share of a 200-line formula to the frame that shows the new total. */
import { type BenchPage, openKept, openPage, slowDown } from './chrome.ts'
import { lineCount, longHeader } from './long-batch.ts'
import type { Site } from './site.ts'
import { against, median, quantile, rounded } from './statistics.ts'

const slower = 4
const limitMs = 100
/** Fields that are typed in, from the top of the formula to its end. */
const fields = 24
const typed = '0.41'

declare global {
  interface Window {
    keys: { readonly taken: number[] }
  }
}

export const benchEditor = async (site: Site): Promise<object> => {
  const bench = await openPage()
  await openEditor(bench, site)
  await watchKeys(bench)
  await slowDown(bench, slower)
  for (let field = 1; field <= fields; field += 1)
    await typeShare(bench, Math.floor((field * (lineCount - 1)) / fields))
  const typing = await takenIn(bench, fields * typed.length)
  for (let undone = 0; undone < fields; undone += 1) await press(bench, 'Control+z')
  const undoing = await takenIn(bench, fields)
  await bench.page.locator('.grip').nth(10).focus()
  for (let moved = 0; moved < fields; moved += 1) await press(bench, 'ArrowDown')
  const moving = await takenIn(bench, fields)
  await bench.close()
  return { typing: said(typing), undoing: said(undoing), moving: said(moving), lines: lineCount }
}

const said = (taken: readonly number[]): object => ({
  medianMs: rounded(median(taken)),
  p95Ms: against(quantile(taken, 0.95), limitMs),
  keys: taken.length,
})

/** The formula comes in as a file does, and is opened to be changed. */
async function openEditor(bench: BenchPage, site: Site): Promise<void> {
  const { page } = bench
  const { revision, materials, balances, formulaId, formulaCode, formulaName, contact } = longHeader()
  const formula = {
    id: formulaId,
    code: formulaCode,
    name: formulaName,
    nickname: 'Long',
    contact,
    revisions: [revision],
  }
  const file = { format: 'pannikin-catalogue', version: 1, materials, balances, formulas: [formula] }
  await openKept(bench, `${site.app}#/formulas`)
  await page.getByLabel('Bring in a file').setInputFiles({
    name: 'formula.json',
    mimeType: 'application/json',
    buffer: Buffer.from(JSON.stringify(file)),
  })
  await page.getByText(formulaName).first().waitFor()
  await page.goto(`${site.app}#/formulas/${formulaId}`)
  await page.getByRole('button', { name: /^Change/ }).click()
  await page
    .locator('.share-input')
    .nth(lineCount - 2)
    .waitFor()
  await page.waitForTimeout(1_500)
}

async function typeShare(bench: BenchPage, at: number): Promise<void> {
  const { page } = bench
  const share = page.locator('.share-input').nth(at - 1)
  await share.focus()
  await share.selectText()
  for (const sign of typed) await press(bench, sign)
  // A hand that looks at what it typed: checks are looked through in this pause, which the next key must not feel.
  await page.waitForTimeout(500)
}

async function press({ page }: BenchPage, key: string): Promise<void> {
  await page.keyboard.press(key)
  await page.waitForTimeout(160)
}

/** What was measured since it was last asked for. */
async function takenIn({ page }: BenchPage, count: number): Promise<readonly number[]> {
  const taken = await page.evaluate(() => window.keys.taken.splice(0))
  if (taken.length !== count) throw new Error(`${taken.length} of ${count} keys were followed by a frame.`)
  return taken
}

async function watchKeys({ page }: BenchPage): Promise<void> {
  await page.evaluate(() => {
    window.keys = { taken: [] }
    addEventListener(
      'keydown',
      (event) => {
        if (!event.isTrusted || event.key === 'Control') return
        const { timeStamp } = event
        requestAnimationFrame(() => {
          const { port1, port2 } = new MessageChannel()
          port1.onmessage = () => window.keys.taken.push(performance.now() - timeStamp)
          port2.postMessage(null)
        })
      },
      true,
    )
  })
}
