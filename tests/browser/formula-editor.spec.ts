import type { Page } from '@playwright/test'
import { expect, openAgain, setOutBench, test } from './support/bench.ts'

const total = (page: Page) => page.locator('.editor-total')
const share = (page: Page, material: string) => page.getByLabel(`Share of the batch: ${material}`)
const linesOf = (page: Page, phase: string) =>
  page.getByRole('list', { name: `Lines of ${phase}` }).getByRole('listitem')

test('[B40] with a finger: a share in grams, a line dragged into another phase, one split, undone, saved as the next revision and compared', async ({
  page,
  context,
}) => {
  await setOutBench(page, context)
  await page.goto('./#/formulas/formula-gel')
  await page.getByRole('button', { name: /^Change/ }).tap()
  await page.getByRole('radio', { name: 'g of the usual batch' }).tap()
  await expect(share(page, 'PVP')).toHaveValue('16')
  await share(page, 'PVP').fill('18')
  await page.getByRole('radio', { name: '% of the batch' }).tap()
  await expect(share(page, 'PVP')).toHaveValue('4.5')
  await expect(total(page)).toContainText('88.930 % of it q.s.')

  await dragByTouch(page, 'Panthenol 75 %', 'Propanediol')
  await expect(linesOf(page, 'Preserve, neutralise').first()).toContainText('Panthenol')
  await expect(linesOf(page, 'Hold')).toHaveCount(1)

  await page.getByRole('button', { name: /^Carbomer/ }).tap()
  await page.getByRole('button', { name: 'Split in two lines' }).tap()
  await expect(share(page, 'Carbomer')).toHaveCount(2)
  await page.getByRole('button', { name: 'Undo' }).tap()
  await expect(share(page, 'Carbomer')).toHaveCount(1)

  await page.getByRole('button', { name: 'Save', exact: true }).tap()
  await expect(page.getByText('QW-GEL-03 r3')).toBeVisible()
  await page.getByRole('button', { name: 'Compare two revisions' }).tap()
  await expect(page.getByRole('row', { name: /PVP/ })).toContainText('+0.500')
  await expect(page.getByRole('row', { name: /Panthenol/ })).toContainText('Phase: C → B')
})

test('[B41] with the keyboard alone: a formula is written, with a sum, moved, taken back, kept through a reload, and saved', async ({
  page,
  context,
}) => {
  await setOutBench(page, context)
  await page.goto('./#/formulas')
  await page.getByRole('button', { name: 'New formula' }).focus()
  await page.keyboard.press('Enter')
  await page.getByLabel('Name', { exact: true }).first().focus()
  for (const text of ['Glycol water', 'GLY-01', 'Glycol']) {
    await page.keyboard.type(text)
    await page.keyboard.press('Tab')
  }
  for (const [typed, sum] of [
    ['water', ''],
    ['propan', '3/0.3'],
    ['squal', '2'],
  ] as const) {
    await page.getByRole('button', { name: /^Add a line/ }).focus()
    await page.keyboard.press('Enter')
    await page.getByLabel('Find').focus()
    await page.keyboard.type(typed)
    await page.keyboard.press('Enter')
    await expect(page.getByRole('dialog')).toHaveCount(0)
    if (sum === '') continue
    await expect(page.locator('.share-input').last()).toBeFocused()
    await page.keyboard.type(sum)
  }
  await expect(share(page, 'Propanediol')).toHaveValue('10')
  await expect(total(page)).toContainText('88.000 % of it q.s.')

  await page.getByRole('button', { name: 'Move Squalane: drag, or arrow keys' }).focus()
  await page.keyboard.press('ArrowUp')
  await expect(linesOf(page, 'Phase A').nth(1)).toContainText('Squalane')
  await expect(page.getByRole('button', { name: 'Move Squalane: drag, or arrow keys' })).toBeFocused()
  await page.keyboard.press('Control+z')
  await expect(linesOf(page, 'Phase A').nth(2)).toContainText('Squalane')
  await page.keyboard.press('Control+Shift+z')
  await expect(linesOf(page, 'Phase A').nth(1)).toContainText('Squalane')

  await openAgain(page)
  await expect(linesOf(page, 'Phase A').nth(1)).toContainText('Squalane')
  await page.getByRole('button', { name: 'Save', exact: true }).focus()
  await page.keyboard.press('Enter')
  await expect(page.getByRole('heading', { level: 1, name: 'Glycol water' })).toBeVisible()
})

/** Takes a line by its handle and lets it go at the upper edge of another, as a finger does. */
async function dragByTouch(page: Page, material: string, before: string): Promise<void> {
  const handle = page.getByRole('button', { name: `Move ${material}: drag, or arrow keys` })
  const target = page.getByRole('button', { name: `Move ${before}: drag, or arrow keys` })
  const whereBoth = async () => {
    const [from, to] = await Promise.all([handle.boundingBox(), target.boundingBox()])
    if (from === null || to === null) throw new Error('Both handles are to be on the page')
    return { from, to }
  }
  const { from: low, to: high } = await whereBoth()
  // Both well inside the screen: near its edges the page goes on by itself.
  await page.evaluate(
    (middleY) => window.scrollBy(0, middleY - window.innerHeight / 2),
    (low.y + high.y + low.height) / 2,
  )
  const { from, to } = await whereBoth()
  const touch = await page.context().newCDPSession(page)
  const at = (y: number) => [{ x: from.x + from.width / 2, y }]
  const startY = from.y + from.height / 2
  await touch.send('Input.dispatchTouchEvent', { type: 'touchStart', touchPoints: at(startY) })
  for (let step = 1; step <= 8; step += 1)
    await touch.send('Input.dispatchTouchEvent', {
      type: 'touchMove',
      touchPoints: at(startY + ((to.y - startY) * step) / 8),
    })
  // A finger rests on the place before it lets go: otherwise it flings, and the next tap does no more than stop that.
  await page.waitForTimeout(250)
  await touch.send('Input.dispatchTouchEvent', { type: 'touchEnd', touchPoints: [] })
}
