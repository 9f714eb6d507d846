/** Every place, in every size and both lights: readable by whoever stands at the bench, and by what reads to them. */
import AxeBuilder from '@axe-core/playwright'
import type { Page } from '@playwright/test'
import { expect, setOutBench, takeUp, test } from './support/bench.ts'

const sizes = [
  { width: 1280, height: 800 },
  { width: 800, height: 1280 },
  { width: 390, height: 844 },
]

const tags = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa']

/** Those of the rules that see colours. In the dark all others see what they have seen in the light: only colours differ. */
const ofColours = ['color-contrast', 'link-in-text-block']

interface Place {
  readonly name: string
  /** What stands behind `#/`; `…` is the batch in hand. */
  readonly address: string
  /** Words that stand there once it is whole. */
  readonly shows: string
  /** What opens something over it, or shows it otherwise. */
  readonly opens?: string
}

const weighing: readonly Place[] = [
  { name: 'the over-weighed panel', address: 'run/…/b-emulsifier', shows: 'Choose a way on' },
  { name: 'a weighing', address: 'run/…/b-cetearyl', shows: '12.500 g to go' },
  { name: 'a weighing that is done', address: 'run/…/b-shea', shows: 'Shea butter' },
  { name: 'charging', address: 'run/…/c-in', shows: 'C in, below 40 °C' },
  { name: 'combining', address: 'run/…/b-into-a', shows: 'B into A' },
  { name: 'more', address: 'run/…/b-cetearyl', shows: 'Spilled some', opens: 'More' },
  { name: 'not in the plan', address: 'run/…/b-cetearyl', shows: 'How much', opens: 'Add something not in' },
]

const processing: readonly Place[] = [
  { name: 'hydration', address: 'run/…/a-hydrate', shows: 'Hydrate the gum' },
  { name: 'heating', address: 'run/…/a-heat', shows: 'Heat A, covered' },
  { name: 'homogenising', address: 'run/…/b-homogenise', shows: 'Homogenise' },
  { name: 'cooling', address: 'run/…/c-cool', shows: 'Cool, stirring' },
  { name: 'adjusting', address: 'run/…/adjust-ph', shows: 'Bring the pH to' },
  { name: 'measuring', address: 'run/…/viscosity-next-day', shows: 'Viscosity' },
  { name: 'resting', address: 'run/…/rest', shows: 'Rest the sample jars' },
]

const documents: readonly Place[] = [
  { name: 'the bench', address: '', shows: 'Start a batch' },
  { name: 'the choice of a formula', address: 'start', shows: 'Of which formula?' },
  { name: 'a batch being set up', address: 'start/formula-lotion', shows: 'Open the batch' },
  { name: 'formulas', address: 'formulas', shows: 'Clear hold hair gel' },
  { name: 'a formula', address: 'formulas/formula-lotion', shows: 'Squalane' },
  { name: 'the editor', address: 'formulas/formula-gel', shows: 'Throw the changes away', opens: 'Change' },
  { name: 'a batch as it was made', address: 'formulas/formula-lotion/…', shows: 'Within its bands' },
  { name: 'batches side by side', address: 'formulas/formula-lotion/side-by-side', shows: 'What goes with' },
  { name: 'materials', address: 'materials', shows: 'Carbomer' },
  { name: 'a material', address: 'materials/carbomer', shows: 'Lots' },
]

const setup: readonly Place[] = [
  { name: 'people', address: 'setup/people', shows: 'Add a person' },
  { name: 'a balance', address: 'setup/balances', shows: 'Repeatability', opens: 'Add a balance' },
  { name: 'vessels', address: 'setup/vessels', shows: 'Add a vessel' },
  { name: 'preferences', address: 'setup/preferences', shows: 'Writing hand' },
  { name: 'storage', address: 'setup/storage', shows: 'The two copies on this tablet' },
  { name: 'the tablet', address: 'setup/tablet', shows: 'This tablet' },
  { name: 'about', address: 'setup/about', shows: 'Cautions' },
]

const records: readonly Place[] = [
  { name: 'records', address: 'records', shows: 'Save everything' },
  { name: 'a record', address: 'records/…', shows: 'Every hash fits' },
  { name: 'a record for its reviewer', address: 'records/…', shows: 'Deviation 1', opens: 'Out of the ordinary' },
  { name: 'the pulls of all batches', address: 'records/pulls', shows: 'Missed' },
  { name: 'the jars that are due', address: 'records/pulls/today', shows: 'Record what is read' },
  { name: 'kept jars', address: 'records/01a17ca8-ce00-7000-8000-000000000009/stability', shows: 'Over time' },
  {
    name: 'a stability plan',
    address: 'records/01a17ca8-ce00-7000-8000-000000000009/stability',
    shows: 'For other batches',
    opens: 'Change the plan',
  },
  { name: 'jar labels', address: 'records/01a17ca8-ce00-7000-8000-000000000009/labels', shows: 'First free label' },
  {
    name: 'checks after the rest',
    address: 'records/01a2075d-8860-7000-8000-00000000000c',
    shows: 'Beside the standard',
    opens: 'Enter the 4 checks that are due',
  },
  { name: 'signing a record', address: 'records/…', shows: 'The signature covers', opens: 'Sign' },
]

test.describe('[B20] every place keeps WCAG 2.2 AA, and nothing scrolls sideways, in three sizes, light and dark', () => {
  // Up to eighty readings of whole pages each, on a machine that may have other work.
  test.describe.configure({ timeout: 180_000 })
  for (const [name, places] of Object.entries({ weighing, processing, documents, setup, records }))
    test(name, async ({ page, context }) => {
      await setOutBench(page, context)
      await takeUp(page, 'Lotion 013')
      const batch = new URL(page.url()).hash.split('/')[2] ?? ''
      for (const place of places) {
        await go(page, { ...place, address: place.address.replace('…', batch) })
        await readsWell(page, place.name)
      }
    })

  test('the first screen', async ({ page }) => {
    await page.goto('./')
    await page.getByRole('button', { name: 'Load the demonstration' }).waitFor()
    await readsWell(page, 'the first screen')
  })
})

/** By way of the bench, as a sheet that was left open must not stand over the next place. */
async function go(page: Page, { address, shows, opens }: Place): Promise<void> {
  await page.setViewportSize({ width: 1280, height: 800 })
  await page.goto('./#/')
  await page.getByText('Checks today').waitFor()
  await page.goto(`./#/${address}`)
  const opener = new RegExp(`^${opens}`)
  const openers = page.getByRole('button', { name: opener }).or(page.getByRole('radio', { name: opener }))
  if (opens !== undefined) await openers.filter({ visible: true }).first().click()
  await page.locator('main, dialog').getByText(shows).filter({ visible: true }).first().waitFor()
}

async function readsWell(page: Page, name: string): Promise<void> {
  for (const size of sizes) {
    await page.setViewportSize(size)
    await painted(page)
    const at = `${name}, ${size.width} × ${size.height}`
    await expect.poll(() => sideways(page), `${at}: wider than the screen by`).toBe(0)
    for (const colorScheme of ['light', 'dark'] as const) {
      await page.emulateMedia({ colorScheme, reducedMotion: 'reduce' })
      await painted(page)
      expect.soft(await violations(page, colorScheme), `${at}, ${colorScheme}`).toEqual([])
    }
  }
}

/** By how many pixels the page is wider than the screen. */
const sideways = (page: Page): Promise<number> =>
  page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth)

/** A new size or light is on the screen with the second frame. */
const painted = (page: Page): Promise<void> =>
  page.evaluate(async () => {
    for (let frames = 0; frames < 2; frames++) await new Promise((next) => requestAnimationFrame(next))
  })

async function violations(page: Page, light: 'light' | 'dark'): Promise<readonly string[]> {
  // Reading axe in takes longer than running it: once a document is enough.
  const isIn = await page.evaluate(() => 'axe' in window)
  const axe = isIn ? new AxeBuilder({ page, axeSource: '!axe' }) : new AxeBuilder({ page })
  axe.options({ resultTypes: ['violations'] }).setLegacyMode()
  const found = await (light === 'light' ? axe.withTags(tags) : axe.withRules(ofColours)).analyze()
  return found.violations.flatMap(({ id, nodes }) =>
    nodes.map(({ target, failureSummary }) => `${id}: ${target.join(' ')}: ${failureSummary}`),
  )
}
