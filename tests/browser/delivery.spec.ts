import { appendFileSync, cpSync, mkdtempSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { serveFolder } from '../house/serve.ts'
import { appStarted, goOffline, openApp } from './support/app.ts'
import { setOutBench } from './support/bench.ts'
import { watchContext } from './support/guard.ts'
import { stepInHand, takeStep } from './support/run.ts'
import { expect, test } from './support/test.ts'

test('[U4] after one visit the app starts without a network', async ({ page, context }) => {
  await openApp(page)
  await goOffline(context)
  await page.reload()
  await appStarted(page)
})

test('[U32] a file that carries a hash comes from the cache without its worker', async ({ page }) => {
  await openApp(page)
  await page.evaluate(() => navigator.serviceWorker.ready)
  await page.reload()
  await appStarted(page)
  const sources = await page.evaluate(() =>
    performance
      .getEntriesByType('resource')
      .filter(({ name }) => /\/assets\/[^/]+\.js$/.test(name))
      .map((entry) => String(entry.toJSON().workerFinalSourceType)),
  )
  expect(new Set(sources)).toEqual(new Set(['cache']))
})

test('[U33] a start in a run shows what was last in hand until the batch is read', async ({ page, context }) => {
  await setOutBench(page, context)
  await page.getByRole('button', { name: /^Go on: Lotion/ }).click()
  await takeStep(page, 'B', 'Melt B')
  await expect(page.getByText('to 75 °C').first()).toBeVisible()
  const address = page.url()
  await page.addInitScript(() => {
    // A database that takes its time.
    if (localStorage.getItem('held') !== null) indexedDB.open = () => ({}) as IDBOpenDBRequest
  })
  await page.evaluate(() => localStorage.setItem('held', ''))
  await page.reload()
  await expect(stepInHand(page)).toHaveText('Melt B')
  await expect(page.locator('.strip-title')).toContainText('Oat barrier body lotion')
  await expect(page.locator('#app').locator('a, button, input, [data-entry]')).toHaveCount(0)

  await page.goto(`${address.split('#')[0]}#/run/another`)
  await page.reload()
  await expect(page.locator('.shell')).toBeVisible()
  await expect(stepInHand(page)).toHaveCount(0)

  await page.evaluate(() => localStorage.removeItem('held'))
  await page.goto(address)
  await page.reload()
  await expect(page.locator('[data-place="run"]').getByRole('heading', { level: 1 })).toHaveText('Melt B')
  await expect(page.getByRole('navigation', { name: 'Steps of the batch' })).toBeVisible()
})

test('[U4] a folder of a host is as good as its root', async ({ browser }) => {
  const folder = mkdtempSync(join(tmpdir(), 'pannikin-folder-'))
  cpSync('dist', join(folder, 'bench'), { recursive: true })
  const { server, origin } = await serveFolder(folder, 0)
  const context = await browser.newContext({ baseURL: `${origin}/bench/` })
  const wrongs = watchContext(context, origin)
  const page = await context.newPage()
  await openApp(page)
  server.close()
  server.closeAllConnections()
  await page.reload()
  await appStarted(page)
  await context.close()
  expect(wrongs).toEqual([])
})

test('[U5] no script comes in from a string, inline or from elsewhere', async ({ page, guard }) => {
  await openApp(page)
  const refused = await page.evaluate(() => {
    const attempts: (() => unknown)[] = [
      () => new Worker('./sw.js'),
      () => Object.assign(document.createElement('script'), { src: './boot.js' }),
      () => Object.assign(document.createElement('div'), { innerHTML: '<p>x</p>' }),
      () =>
        (
          globalThis as { trustedTypes?: { createPolicy(name: string, rules: object): unknown } }
        ).trustedTypes?.createPolicy('other', {}),
    ]
    return attempts.map((attempt) => {
      try {
        attempt()
        return 'ran'
      } catch (error) {
        return (error as Error).name
      }
    })
  })
  expect(refused).toEqual(Array(4).fill('TypeError'))
  expect(guard.splice(0).length).toBeGreaterThan(0)
})

test('[U7] recovery throws away copies of the app, never what a person recorded', async ({ page, context }) => {
  await openApp(page)
  const entry = await page.locator('script[type="module"]').evaluate((script: HTMLScriptElement) => script.src)
  await page.evaluate(async (damaged) => {
    const folder = await navigator.storage.getDirectory()
    const file = await (await folder.getFileHandle('kept.txt', { create: true })).createWritable()
    await file.write('a cup')
    await file.close()
    await new Promise((resolve, reject) => {
      const opening = indexedDB.open('kept', 1)
      opening.onupgradeneeded = () => opening.result.createObjectStore('cups')
      opening.onsuccess = () => resolve(opening.result.close())
      opening.onerror = reject
    })
    localStorage.setItem('kept', 'a cup')
    // The damage: the app's entry is gone from the stored copy.
    for (const name of await caches.keys()) {
      const cache = await caches.open(name)
      for (const request of await cache.keys()) if (request.url.startsWith(damaged)) await cache.delete(request)
    }
  }, entry)
  await context.route(entry, (route) => route.abort())
  await page.reload()
  const panel = page.locator('#recovery')
  await expect(panel).toContainText('still on this tablet')

  await goOffline(context)
  await panel.getByRole('button', { name: 'Recover' }).click()
  await expect(panel).toContainText('nothing was changed')
  expect(await page.evaluate(async () => (await caches.keys()).length)).toBeGreaterThan(0)

  await context.setOffline(false)
  await context.unroute(entry)
  await panel.getByRole('button', { name: 'Recover' }).click()
  await appStarted(page)
  const kept = await page.evaluate(async () => {
    const folder = await navigator.storage.getDirectory()
    const file = await (await folder.getFileHandle('kept.txt')).getFile()
    const databases = await indexedDB.databases()
    return [await file.text(), databases.some(({ name }) => name === 'kept'), localStorage.getItem('kept')]
  })
  expect(kept).toEqual(['a cup', true, 'a cup'])
})

test('[U8] the watch over requests sees the page, its workers and the service worker', async ({
  page,
  context,
  guard,
}) => {
  await openApp(page)
  const [worker, serviceWorker] = [page.workers()[0], context.serviceWorkers()[0]]
  if (worker === undefined || serviceWorker === undefined) throw new Error('The app runs without its workers.')
  const seen = new Set<string>()
  context.on('request', (request) => seen.add(new URL(request.url()).search))
  const ask = (url: string) =>
    fetch(url)
      .then((answer) => answer.ok)
      .catch(() => false)
  const elsewhere = 'http://127.0.0.1:9/'
  const asking: Readonly<Record<string, (url: string) => Promise<boolean>>> = {
    page: (url) => page.evaluate(ask, url),
    worker: (url) => worker.evaluate(ask, url),
    'service-worker': (url) => serviceWorker.evaluate(ask, url),
  }
  for (const [name, askOf] of Object.entries(asking)) {
    await askOf(new URL(`./icons/cup.svg?from=${name}`, page.url()).href)
    await expect.poll(() => [...seen], `a request of the ${name}`).toContain(`?from=${name}`)
    expect(await askOf(`${elsewhere}?from=${name}`)).toBe(false)
  }
  // Asked of another origin, each is either refused by the policy before it is a request, or seen.
  await expect.poll(() => guard.length).toBeGreaterThan(0)
  guard.splice(0)
})

test('[U1] a new version waits while the page goes on, and takes over when asked', async ({ browser }) => {
  const folder = mkdtempSync(join(tmpdir(), 'pannikin-update-'))
  cpSync('dist', folder, { recursive: true })
  const { server, origin } = await serveFolder(folder, 0)
  const context = await browser.newContext({ baseURL: `${origin}/` })
  const page = await context.newPage()
  await openApp(page)
  await page.evaluate(() => {
    document.title = 'the same page'
  })
  appendFileSync(join(folder, 'sw.js'), '\n// another version\n')
  const workers = () =>
    page.evaluate(async () => {
      const { waiting, active } = await navigator.serviceWorker.ready
      return { waiting: waiting?.state, active: active?.state }
    })
  const waits = { waiting: 'installed', active: 'activated' }
  // Asked again, as the app does whenever it is seen: an install that a busy machine cut off is begun anew.
  const look = async () => {
    await page.evaluate(async () => (await navigator.serviceWorker.ready).update())
    return workers()
  }
  await expect.poll(look, { timeout: 20_000 }).toEqual(waits)
  await page.waitForTimeout(1000)
  expect(await workers()).toEqual(waits)
  expect(await page.title()).toBe('the same page')
  const taken = await page.evaluate(async () => {
    const registration = await navigator.serviceWorker.ready
    const changed = new Promise((next) =>
      navigator.serviceWorker.addEventListener('controllerchange', next, { once: true }),
    )
    registration.waiting?.postMessage('take-over')
    await changed
    return registration.waiting
  })
  expect(taken).toBeNull()
  await context.close()
  server.close()
})
