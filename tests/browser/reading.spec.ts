/** Every place, in every size and both lights: readable by whoever stands at the bench, and by what reads to them. */
import AxeBuilder from '@axe-core/playwright'
import type { Page } from '@playwright/test'
import { expect, setOutBench, takeUp, test } from './support/bench.ts'

const sizes = [
  { width: 1280, height: 800 },
  { width: 800, height: 1280 },
  { width: 390, height: 844 },
]

interface Place {
  readonly name: string
  /** What stands behind `#/`; `run/` is followed by the batch in hand. */
  readonly address: string
  /** Words that stand there once it is whole. */
  readonly shows: string
  /** A button that opens something over it. */
  readonly opens?: string
}

const lotionPlaces: readonly Place[] = [
  { name: 'the over-weighed panel', address: 'run/b-emulsifier', shows: 'Choose a way on' },
  { name: 'a weighing', address: 'run/b-alcohol', shows: 'Target' },
  { name: 'a weighing that is done', address: 'run/b-shea', shows: 'Shea butter' },
  { name: 'hydration', address: 'run/a-hydrate', shows: 'Hydrate the gum' },
  { name: 'heating', address: 'run/a-heat', shows: 'Heat A, covered' },
  { name: 'combining', address: 'run/b-into-a', shows: 'B into A' },
  { name: 'homogenising', address: 'run/b-homogenise', shows: 'Homogenise' },
  { name: 'cooling', address: 'run/c-cool', shows: 'Cool, stirring' },
  { name: 'charging', address: 'run/c-in', shows: 'C in, below 40 °C' },
  { name: 'adjusting', address: 'run/adjust-ph', shows: 'Bring the pH to' },
  { name: 'measuring', address: 'run/viscosity-next-day', shows: 'Viscosity' },
]

const runSheets: readonly Place[] = [
  { name: 'more', address: 'run/b-alcohol', shows: 'Spilled some', opens: 'More' },
  { name: 'not in the plan', address: 'run/b-alcohol', shows: 'How much', opens: 'Add something not in the plan' },
]

const housePlaces: readonly Place[] = [
  { name: 'the bench', address: '', shows: 'Start a batch' },
  { name: 'the choice of a formula', address: 'start', shows: 'Of which formula?' },
  { name: 'a batch being set up', address: 'start/formula-lotion', shows: 'Open the batch' },
  { name: 'formulas', address: 'formulas', shows: 'Clear hold hair gel' },
  { name: 'a formula', address: 'formulas/formula-lotion', shows: 'Squalane' },
  { name: 'the editor', address: 'formulas/formula-gel', shows: 'Throw the changes away', opens: 'Change' },
  { name: 'materials', address: 'materials', shows: 'Carbomer' },
  { name: 'a material', address: 'materials/carbomer', shows: 'Lots' },
  { name: 'people', address: 'setup/people', shows: 'Add a person' },
  { name: 'a balance', address: 'setup/balances', shows: 'Repeatability', opens: 'Add a balance' },
  { name: 'vessels', address: 'setup/vessels', shows: 'Add a vessel' },
  { name: 'preferences', address: 'setup/preferences', shows: 'Writing hand' },
  { name: 'storage', address: 'setup/storage', shows: 'The two copies on this tablet' },
  { name: 'the tablet', address: 'setup/tablet', shows: 'This tablet' },
  { name: 'about', address: 'setup/about', shows: 'Cautions' },
]

const recordPlaces: readonly Place[] = [
  { name: 'records', address: 'records', shows: 'Save everything' },
  { name: 'a record', address: 'records/', shows: 'Every hash fits' },
]

test.describe('[B10] every place keeps WCAG 2.2 AA, and nothing scrolls sideways, in three sizes, light and dark', () => {
  test('a run', async ({ page, context }) => {
    await setOutBench(page, context)
    await takeUp(page, 'Lotion 013')
    const batch = batchOf(page)
    for (const place of [...lotionPlaces, ...runSheets]) {
      await go(page, { ...place, address: place.address.replace('run/', `run/${batch}/`) })
      await readsWell(page, place.name)
    }
  })

  test('the house', async ({ page, context }) => {
    await setOutBench(page, context)
    for (const place of housePlaces) {
      await go(page, place)
      await readsWell(page, place.name)
    }
  })

  test('the first screen and the records', async ({ page, context }) => {
    await page.goto('./')
    await page.getByRole('button', { name: 'Load the demonstration' }).waitFor()
    await readsWell(page, 'the first screen')
    await setOutBench(page, context)
    await takeUp(page, 'Lotion 013')
    const batch = batchOf(page)
    for (const place of recordPlaces) {
      await go(page, { ...place, address: place.address.replace('/', `/${batch}`) })
      await readsWell(page, place.name)
    }
  })
})

const batchOf = (page: Page): string => new URL(page.url()).hash.split('/')[2] ?? ''

/** From the bench each time, as a sheet that was left open must not stand over the next place. */
async function go(page: Page, { address, shows, opens }: Place): Promise<void> {
  await page.setViewportSize({ width: 1280, height: 800 })
  await page.goto('./#/')
  await page.goto(`./#/${address}`)
  if (opens !== undefined) await page.getByRole('button', { name: opens }).last().click()
  await page.getByText(shows).filter({ visible: true }).first().waitFor()
}

async function readsWell(page: Page, name: string): Promise<void> {
  for (const size of sizes) {
    await page.setViewportSize(size)
    const at = `${name}, ${size.width} × ${size.height}`
    const [inner = 0, outer = 0] = await page.evaluate(() => [
      document.documentElement.scrollWidth,
      document.documentElement.clientWidth,
    ])
    expect(inner, `${at}: wider than the screen`).toBeLessThanOrEqual(outer)
    for (const colorScheme of ['light', 'dark'] as const) {
      await page.emulateMedia({ colorScheme, reducedMotion: 'reduce' })
      expect.soft(await violations(page), `${at}, ${colorScheme}`).toEqual([])
    }
  }
}

async function violations(page: Page): Promise<readonly string[]> {
  const tags = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa']
  const found = await new AxeBuilder({ page }).withTags(tags).setLegacyMode().analyze()
  return found.violations.flatMap(({ id, nodes }) =>
    nodes.map(({ target, failureSummary }) => `${id}: ${target.join(' ')}: ${failureSummary}`),
  )
}
