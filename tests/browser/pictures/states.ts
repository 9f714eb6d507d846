import { readFileSync } from 'node:fs'
import type { Page } from '@playwright/test'
import { batchAt, bringBatch } from '../support/batch-at.ts'
import { pasteText } from '../support/paste.ts'
import * as run from '../support/run.ts'

/** A place or a state of a run: its address, words that stand there once it is drawn, and what is done there first. */
interface State {
  readonly name: string
  readonly address: string
  readonly shows: string
  readonly prepare?: (page: Page) => Promise<void>
}

const { batch } = JSON.parse(readFileSync('demo-data/moment.json', 'utf8')) as { batch: string }

const press = (name: string | RegExp) => (page: Page) => run.press(page, name)

const places: readonly State[] = [
  { name: 'bench', address: 'bench', shows: 'Checks today' },
  { name: 'start-choice', address: 'start', shows: 'Of which formula?' },
  { name: 'start', address: 'start/formula-lotion', shows: 'Open the batch' },
  { name: 'formulas', address: 'formulas', shows: 'Everyday shampoo' },
  { name: 'formula', address: 'formulas/formula-lotion', shows: 'Squalane' },
  { name: 'editor', address: 'formulas/formula-gel', shows: 'Carbomer', prepare: press(/^Change/) },
  { name: 'materials', address: 'materials', shows: 'Carbomer' },
  { name: 'material', address: 'materials/carbomer', shows: 'Lots' },
  { name: 'records', address: 'records', shows: 'QW-LOT-01-012' },
  { name: 'record', address: `records/${batch}`, shows: 'Every entry and change' },
  { name: 'setup-people', address: 'setup/people', shows: 'Rhona Kestevan' },
  { name: 'setup-preferences', address: 'setup/preferences', shows: 'Writing hand' },
  { name: 'setup-storage', address: 'setup/storage', shows: 'The two copies on this tablet' },
  { name: 'setup-about', address: 'setup/about', shows: 'Cautions' },
]

const cards: readonly State[] = [
  { name: 'run-over', address: `run/${batch}/b-emulsifier`, shows: 'Choose a way on' },
  {
    name: 'run-within',
    address: `run/${batch}/b-cetearyl`,
    shows: '12.500 g to go',
    prepare: (page) => run.reading(page).fill('12.51'),
  },
  { name: 'run-done', address: `run/${batch}/b-shea`, shows: 'This is what was recorded' },
  { name: 'run-hydrate', address: `run/${batch}/a-hydrate`, shows: 'Start 20 min' },
  { name: 'run-heat', address: `run/${batch}/b-melt`, shows: 'Not read yet' },
  { name: 'run-combine', address: `run/${batch}/b-into-a`, shows: 'Oil beaker into Main beaker' },
  { name: 'run-closed', address: `run/${batch}/c-in`, shows: 'First:' },
  { name: 'run-adjust', address: `run/${batch}/adjust-ph`, shows: 'Bring the pH to' },
  { name: 'run-measure', address: `run/${batch}/read-ph`, shows: 'pH after make-up' },
  { name: 'run-make-up', address: `run/${batch}/make-up`, shows: 'Make up to weight' },
  {
    name: 'run-unplanned',
    address: `run/${batch}/b-cetearyl`,
    shows: 'Target 12.500 g',
    prepare: press('Add something not in the plan'),
  },
  { name: 'run-more', address: `run/${batch}/b-cetearyl`, shows: 'Target 12.500 g', prepare: press('More') },
]

/** What opens over a place, and what has to be typed or brought in first. */
const opened: readonly State[] = [
  {
    name: 'formula-checks',
    address: 'formulas/formula-shampoo',
    shows: 'Checks',
    prepare: (page) => page.getByText('Worth knowing').click(),
  },
  {
    name: 'formula-label',
    address: 'formulas/formula-shampoo',
    shows: 'Checks',
    prepare: press(/^Label draft/),
  },
  { name: 'formula-scale', address: 'formulas/formula-shampoo', shows: 'Checks', prepare: press(/^Scale/) },
  { name: 'formula-as-made', address: `formulas/formula-lotion/${batch}`, shows: 'Within its bands' },
  {
    name: 'spreadsheet',
    address: 'formulas/~spreadsheet',
    shows: 'Cells from a spreadsheet',
    prepare: async (page) => {
      await pasteText(page.getByLabel('Cells from a spreadsheet'), spreadsheet)
      await page.getByLabel('Column C: %').waitFor()
    },
  },
  {
    name: 'run-adjust-advice',
    address: 'bench',
    shows: 'Checks today',
    prepare: async (page) => {
      await bringBatch(page, batchAt('lotion', 'adjust-ph'))
      await page.goto('./#/run/one/adjust-ph')
      await run.field(page, 'Sample at').fill('25')
      await run.enter(page, 'pH', '6.31', 'Record pH 6.31')
      await page.getByText('pH 6.31 now. Add').first().waitFor()
    },
  },
]

const spreadsheet = [
  'Barley hand lotion QW-BAR-05',
  'Phase\tIngredient\t%\tINCI',
  'A\tAqua\tad 100\tAqua',
  '\tPropanediol\t4,00\tPropanediol',
  'B\tSqualane\t6,50\tSqualane',
  '\tNiacinamide\t2,00\tNiacinamide',
].join('\n')

export const states: readonly State[] = [...places, ...cards, ...opened]
