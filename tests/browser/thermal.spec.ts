/** Heating and cooling: the app reads the thermometer's figures and says what comes next. */
import type { Page } from '@playwright/test'
import { openTestBench } from '../support/batch'
import { runUpTo } from '../support/run'
import { inAir } from '../support/thermal-bench'
import { expect, passes, setOutBench, takeUp, test } from './support/bench.ts'
import { bringIn } from './support/bring-in.ts'
import * as run from './support/run.ts'

/** A lotion that cools in a room of 22 °C. */
const cooling = [
  ['00:30', '72.4'],
  ['04:00', '66.9'],
  ['04:00', '62.9'],
  ['05:00', '57.2'],
  ['05:00', '53.4'],
  ['06:00', '48.1'],
] as const

test('[B30] the time to the cool-down is told from the readings, in strip and bench too, and the gate opens after it', async ({
  page,
  context,
}) => {
  await setOutBench(page, context)
  const bench = openTestBench(inAir())
  runUpTo(bench, 'c-cool')
  await bringIn(page, bench)
  await passes(page, '02:00:00')
  await page.goto('./#/run/one')
  await expect(run.stepInHand(page)).toHaveText('Cool, stirring')
  const card = page.locator('[data-place="run"]')
  await cool(page, 0, 2)
  await expect(card).toContainText('How warm is the room?')
  await run.enter(page, 'Room', '22', 'The room is at 22 °C')
  await expect(card).toContainText('cannot be told yet')
  await cool(page, 2, 6)
  await expect(card).toContainText(/Reaches 40 °C in\s*12–1[67] min/)
  await expect(card).toContainText('6 readings, room 22 °C, falling 0.7 °C a minute')
  await expect(card).toContainText('3 lines, 13.150 g')
  const picture = card.getByRole('img', { name: /^Main beaker, °C by time. Reaches 40 °C in 12–1/ })
  await expect(picture).toBeVisible()
  await expect(card.getByRole('table')).toContainText('66.9')

  await page.getByRole('link', { name: 'Bench' }).click()
  await expect(page.getByRole('article').or(page.locator('.batch')).first()).toContainText(/40 °C in\s*1[12]–1[67] min/)
  await takeUp(page, 'Lotion 041')
  await run.press(page, 'Weigh phase C')
  await expect(run.stepInHand(page)).toHaveText('Panthenol 75 %')
  await expect(page.getByRole('list', { name: 'Timers and what waits' })).toContainText(/40 °C\s*in 1\d–1\d min/)
  await run.weighByKeys(page, '6.65')

  await run.takeStep(page, 'Cool-down', 'C in, below 40 °C')
  await expect(card).toContainText('Panthenol 75 % goes in below 40 °C')
  await passes(page, '17:00')
  await run.takeStep(page, 'Cool-down', 'Cool, stirring')
  await expect(card).toContainText('Should be at 40 °C since')
  await run.readTemperature(page, '39.4')
  await run.press(page, 'At 40 °C: done')
  await run.takeStep(page, 'Cool-down', 'C in, below 40 °C')
  await expect(card).not.toContainText('goes in below 40 °C')
})

test('[B31] a °F figure, readings that contradict each other and a late one are asked about and kept as they were read', async ({
  page,
  context,
}) => {
  await setOutBench(page, context)
  await takeUp(page, 'Lotion 013')
  await page.goto(`${page.url().replace(/[^/]*$/, '')}b-melt`)
  const card = page.locator('[data-place="run"]')
  await run.field(page, 'Thermometer').fill('167')
  await expect(card).toContainText('°F? 167 °F is 75 °C.')
  await run.field(page, 'Thermometer').fill('300')
  await run.press(page, 'Record 300 °C')
  await expect(card).toContainText('300 °C is not a temperature of this bench')
  await run.enter(page, 'Thermometer', '82', /^Record 82/)
  await expect(card).toContainText('82 °C is 7 °C over the 75 °C of this step')
  await run.press(page, 'Type a reading')
  await run.press(page, /^Read just now/)
  await run.enter(page, 'Thermometer', '60', /^Record 60/)
  await expect(card).toContainText('Last reading 82 °C')
  await run.press(page, 'Type a reading')
  await run.enter(page, 'Thermometer', '70', /^Record 70/)
  await expect(card).toContainText('Two readings do not fit each other')
  await run.press(page, 'Strike out 70 °C')
  await run.press(page, 'mistyped')
  await run.press(page, 'Strike it out')
  await expect(card).toContainText('Last reading 82 °C')
})

async function cool(page: Page, from: number, to: number): Promise<void> {
  for (const [time, celsius] of cooling.slice(from, to)) {
    await passes(page, time)
    await run.readTemperature(page, celsius)
  }
}
