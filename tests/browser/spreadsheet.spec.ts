/** A formula that stands in a spreadsheet is brought in, looked over, put right, and weighed. */

import { xlsxOf } from '../support/xlsx.ts'
import { expect, setOutBench, test } from './support/bench.ts'
import { pasteText } from './support/paste.ts'

const cells = [
  'Barley hand lotion QW-BAR-05',
  '',
  'Phase\tIngredient\t%\tINCI',
  'A\tAqua\tad 100\tAqua',
  '\tPropanediol\t4,00\tPropanediol',
  'B\tSqualane\t6,50\tSqualane',
  '\tNiacinamide\t2,00\tNiacinamide',
  'Total\t\t100,00\t',
  '',
  'Mild, for every day.',
].join('\n')

test('[B38] cells pasted from a spreadsheet become a formula that a batch can be started from, offline', async ({
  page,
  context,
}) => {
  await setOutBench(page, context)
  await page.getByRole('link', { name: 'Formulas', exact: true }).click()
  await page.getByRole('link', { name: /^From a spreadsheet/ }).click()
  await pasteText(page.getByLabel('Cells from a spreadsheet'), cells)

  await expect(page.getByLabel('Name', { exact: true })).toHaveValue('Barley hand lotion')
  await expect(page.getByLabel('Column C: %')).toHaveValue('percent')
  await expect(page.getByRole('button', { name: /Save the formula/ })).toContainText('1 thing to settle first')
  await page.reload()
  await page.getByRole('button', { name: 'It is Water, purified' }).click()
  await page.getByRole('button', { name: /Save the formula/ }).click()

  await expect(page.getByRole('heading', { level: 1, name: 'Barley hand lotion' })).toBeVisible()
  await expect(page.getByText('Mild, for every day.')).toBeVisible()
  await page.getByRole('link', { name: /^Start a batch/ }).click()
  await expect(page.getByLabel('Batch size')).toHaveValue('500')
})

test('[B39] of a workbook the sheet is chosen, what is wrong is said and settled, and markup in names stays text', async ({
  page,
  context,
}) => {
  await setOutBench(page, context)
  await page.goto('./#/formulas/~spreadsheet')
  const markup = '<img src=x onerror="document.title=1">'
  const rows = [
    ['Ingredient', '%'],
    ['Water, purified', 'q.s.'],
    ['Squalane', { date: '2026-05-03' }],
    [markup, 1],
  ]
  // Long enough that unpacking it the usual way would want a worker, which the page's policy forbids.
  const long = Array.from({ length: 1500 }, (_, at) => [`Old note ${at}`, 'kept for the files '.repeat(25)])
  const bytes = xlsxOf({
    sheets: [
      {
        name: 'Rota',
        rows: [
          ['Day', 'Who'],
          ['Monday', 'RK'],
        ],
      },
      { name: 'Gel', rows },
      { name: 'Archive', rows: long },
    ],
  })
  await page.getByLabel('Choose a file').setInputFiles({ name: 'gel.xlsx', mimeType: '', buffer: Buffer.from(bytes) })

  await expect(page.getByLabel('Sheet')).toHaveValue('1')
  await expect(page.getByText('Row 3, column B: "2026-05-03" is a date.')).toBeVisible()
  await expect(page.getByRole('listitem').filter({ hasText: markup })).toBeVisible()
  await page.getByLabel('Share (B3)').fill('')
  await page.getByLabel('Share (B3)').pressSequentially('3,5')
  await expect(page.getByLabel('Share (B3)'), 'a field stays while it is typed in').toHaveValue('3,5')
  await page.getByLabel('Name', { exact: true }).fill('Plain gel')
  await page.getByLabel('Code', { exact: true }).fill('QW-PLA-06')
  await page.getByLabel('What its batches are called').fill('Gel')
  await page.getByRole('button', { name: /Save the formula/ }).click()

  await expect(page.getByRole('heading', { level: 1, name: 'Plain gel' })).toBeVisible()
  await expect(page.getByText(markup).first()).toBeVisible()
  await expect(page).not.toHaveTitle('1')
})
