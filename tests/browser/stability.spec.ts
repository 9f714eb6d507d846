/** Kept jars: a plan from a template, results in one pass by the keyboard, how they go, and labels that lead back. */
import { expect, setOutBench, test } from './support/bench.ts'
import { scan } from './support/scan.ts'

test('[B48] jars are planned, read in one pass, seen to leave their limit, and labelled with their own address', async ({
  page,
  context,
}) => {
  await setOutBench(page, context)
  await page.getByRole('link', { name: /^Lotion 011: 2 jars to pull/ }).click()
  const first = page.getByRole('region', { name: 'QW-LOT-01-011, 25 °C, week 2' })
  await first.getByLabel('pH, rested').focus()
  // pH, viscosity, spindle, speed, torque and temperature of each.
  for (const figure of ['5.09', '11450', '4', '12', '57', '25', '5.07', '11100', '3', '12', '8', '25']) {
    await page.keyboard.type(figure)
    await page.keyboard.press('Enter')
  }
  const second = page.getByRole('region', { name: 'QW-LOT-01-011, 40 °C, week 2' })
  await expect(second.getByText('Read not as asked: spindle 4.')).toBeVisible()
  await expect(second.getByText('Torque outside 10–100 %')).toBeVisible()
  await expect(page.getByRole('button', { name: 'Record 2 jars' })).toBeFocused()
  await page.keyboard.press('Enter')
  await expect(page.getByText('All jars that were due are read')).toBeVisible()

  await page.getByRole('link', { name: 'Records', exact: true }).click()
  await page.getByRole('link', { name: /QW-LOT-01-009/ }).click()
  await page.getByRole('link', { name: 'Stability' }).click()
  const hot = page.getByRole('figure', { name: 'Viscosity, rested, 40 °C' })
  await expect(hot.getByText(/^Its 95 % bound meets 8,000 mPa·s after 1\.6 weeks/)).toBeVisible()
  await expect(hot.getByText(/^Indication only: .*warmer than a shelf/)).toBeVisible()
  await expect(hot.locator('canvas')).toBeVisible()

  await page.getByRole('link', { name: 'Records', exact: true }).click()
  await page.getByRole('link', { name: /QW-LOT-01-012/ }).click()
  await page.getByRole('link', { name: 'Stability' }).click()
  await page.getByRole('button', { name: 'Make a plan' }).click()
  const sheet = page.getByRole('dialog', { name: 'Stability plan' })
  await sheet.getByRole('radio', { name: 'Quick look, 4 weeks' }).check({ force: true })
  await sheet.getByLabel('Name of the template').fill('Short and warm')
  await sheet.getByRole('button', { name: 'Keep as a template' }).click()
  await expect(sheet.getByRole('radio', { name: 'Short and warm' })).toBeChecked()
  await sheet.getByRole('button', { name: 'Keep this plan' }).click()
  await expect(page.getByRole('link', { name: /^40 °C, week 4/ })).toBeVisible()

  await page.getByRole('link', { name: 'Jar labels' }).click()
  await page.getByLabel('First free label').fill('20')
  await expect(page.getByRole('img', { name: /^A sheet with 2 labels: 25 °C, day 0; 40 °C, day 0/ })).toBeVisible()
  await page.emulateMedia({ colorScheme: 'dark' })
  const code = page.locator('.jar-label-code').first()
  expect(await code.evaluate((path) => getComputedStyle(path).fill)).toBe('rgb(0, 0, 0)')
  expect(
    await page
      .locator('.jar-label-paper')
      .first()
      .evaluate((paper) => getComputedStyle(paper).fill),
  ).toBe('rgb(255, 255, 255)')
  await page.emulateMedia({ media: 'print' })
  const label = page.locator('[data-address$="/40c.28"]')
  const read = await scan(page, label)
  expect(read).toBe(await label.getAttribute('data-address'))
  await page.goto(read ?? '')
  await expect(page.getByRole('region', { name: 'QW-LOT-01-012, 40 °C, week 4' })).toBeVisible()
})
