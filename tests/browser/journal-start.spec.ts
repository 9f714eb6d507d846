import { appStarted } from './support/app.ts'
import { setOutBench } from './support/bench.ts'
import { stepInHand } from './support/run.ts'
import { expect, test } from './support/test.ts'

test('[S58] the journal begins at once in a run, on the bench once the database has answered, and without it as well', async ({
  page,
  context,
}) => {
  await setOutBench(page, context)
  await page.addInitScript(() => {
    const began: string[] = []
    Object.assign(window, { began })
    const { open } = indexedDB
    indexedDB.open = (...asked) => {
      const answer = localStorage.getItem('held') === null ? open.apply(indexedDB, asked) : ({} as IDBOpenDBRequest)
      answer.addEventListener?.('success', () => began.push('database'))
      return answer
    }
    window.Worker = class extends Worker {
      constructor(...asked: ConstructorParameters<typeof Worker>) {
        super(...asked)
        began.push('journal')
      }
    }
  })
  const began = () => page.evaluate(() => (window as unknown as { began: string[] }).began.slice(0, 2).join())
  await page.reload()
  await appStarted(page)
  await expect.poll(began).toBe('database,journal')

  await page.getByRole('button', { name: /^Go on: Lotion/ }).click()
  await stepInHand(page).waitFor()
  await page.reload()
  await appStarted(page)
  await expect.poll(began).toBe('journal,database')

  await page.evaluate(() => localStorage.setItem('held', ''))
  await page.goto('#/bench')
  await page.reload()
  await expect.poll(began).toBe('journal')
})
