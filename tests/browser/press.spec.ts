import { expect, setOutBench, takeUp, test } from './support/bench.ts'
import * as run from './support/run.ts'

test('[U34] Record stays down until its outcome is there; a press that slides off it records nothing', async ({
  page,
  context,
}) => {
  await setOutBench(page, context)
  await takeUp(page, 'Lotion 013')
  await run.takeStep(page, 'Oil phase', 'Cetearyl alcohol')
  await run.typeKeys(page, '3')
  const record = run.recordButton(page)
  const down = page.locator('.record-down')

  const box = await record.boundingBox()
  if (box === null) throw new Error('Record is not on the screen.')
  await page.mouse.move(box.x + 40, box.y + 40)
  await page.mouse.down()
  await expect(down).toHaveCount(1)
  await page.mouse.move(box.x + 40, box.y - 200)
  await expect(down).toHaveCount(0)
  await page.mouse.up()
  await expect(run.reading(page)).toHaveValue('3')

  await page.mouse.move(box.x + 40, box.y + 40)
  await page.mouse.down()
  await expect(down).toHaveCount(1)
  await page.mouse.up()
  await expect(run.rung(page, 'Cetearyl alcohol')).toContainText('3.000 g of 12.500')
  await expect(down).toHaveCount(0)

  await run.weighByPad(page, '9.5')
  await expect(run.rung(page, 'Cetearyl alcohol')).toContainText('12.500 g of 12.500')
  await expect(down).toHaveCount(0)
})
