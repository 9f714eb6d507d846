/**
 * `npm run faults -- --kills N`: the production build in real Chromium, killed as a whole in the middle of its work, N
 * times; every third time with two pages, every fourth time with a torn database log behind it. Prints one JSON object;
 * exits with 1 where anything is missing that the screen had acknowledged.
 */
import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { setTimeout as pause } from 'node:timers/promises'
import { parseArgs } from 'node:util'
import type { Page } from '@playwright/test'
import { provideBuild } from '../house/build.ts'
import { serveFolder } from '../house/serve.ts'
import { type KillableChrome, startChrome } from './chrome.ts'
import { readShown, readStored, recordNext, takeBatch } from './driver.ts'
import { tearLog } from './torn-log.ts'

interface Tally {
  /** Ids that the screen acknowledged, in this order. */
  readonly acknowledged: string[]
  readonly lost: Set<string>
  /** What else was wrong, in words. */
  readonly wrongs: string[]
  torn: number
  healed: number
}

const settleWithinMs = 15_000
const killAfterMs = { least: 100, most: 2_500 }

const { values } = parseArgs({ options: { kills: { type: 'string', default: '20' } } })
const kills = Number(values.kills)
if (!Number.isInteger(kills) || kills < 1) throw new Error('--kills takes a whole number from 1.')

provideBuild()
const { server, origin } = await serveFolder('dist', 0)
const profile = mkdtempSync(join(tmpdir(), 'pannikin-faults-'))
const startedMs = Date.now()
const tally: Tally = { acknowledged: [], lost: new Set(), wrongs: [], torn: 0, healed: 0 }
try {
  for (let round = 0; round < kills; round++) await killOnce(round)
  await inBrowser((chrome) => check(chrome.page))
} finally {
  server.close()
  rmSync(profile, { recursive: true, force: true })
}
const { acknowledged, lost, wrongs, torn, healed } = tally
const report = {
  kills,
  torn,
  acknowledged: acknowledged.length,
  lost: lost.size,
  healed,
  wrongs,
  ms: Date.now() - startedMs,
}
console.log(JSON.stringify(report))
process.exit(lost.size === 0 && wrongs.length === 0 && acknowledged.length > 0 ? 0 : 1)

async function killOnce(round: number): Promise<void> {
  const chrome = await startChrome(profile)
  try {
    await check(chrome.page)
    const pages = [chrome.page]
    if (round % 3 === 1) {
      const second = await chrome.context.newPage()
      await takeBatch(second, origin)
      pages.push(second)
    }
    const work = Promise.all(pages.map((page) => recordUntilGone(page)))
    await pause(killAfterMs.least + Math.random() * (killAfterMs.most - killAfterMs.least))
    await chrome.kill()
    await work
  } catch (error) {
    await chrome.kill()
    throw error
  }
  if (round % 4 === 3) await tear()
}

/** The torn record shows at the second opening: the first one reads, writes behind it, and closes. */
async function tear(): Promise<void> {
  if (tearLog(profile, origin) === undefined) return
  tally.torn += 1
  for (let opening = 0; opening < 2; opening++) {
    await inBrowser(async ({ page }) => {
      await check(page)
      tally.acknowledged.push((await recordNext(page)).id)
    })
  }
}

async function inBrowser(work: (chrome: KillableChrome) => Promise<void>): Promise<void> {
  const chrome = await startChrome(profile)
  try {
    await work(chrome)
    await chrome.close()
  } catch (error) {
    await chrome.kill()
    throw error
  }
}

async function recordUntilGone(page: Page): Promise<void> {
  try {
    for (;;) tally.acknowledged.push((await recordNext(page)).id)
  } catch {
    // The kill: what was not acknowledged by now was never promised.
  }
}

/** Opens the batch, and finds every acknowledged entry in the database and all their mass on the screen. */
async function check(page: Page): Promise<void> {
  await takeBatch(page, origin)
  const giveUpAtMs = Date.now() + settleWithinMs
  for (;;) {
    const stored = await readStored(page)
    const known = new Set(stored.ids)
    const missing = tally.acknowledged.filter((id) => !known.has(id))
    const { parts } = await readShown(page)
    tally.healed = stored.healed
    if (missing.length === 0 && parts >= tally.acknowledged.length) return
    if (Date.now() > giveUpAtMs) {
      for (const id of missing) tally.lost.add(id)
      if (parts < tally.acknowledged.length) tally.wrongs.push(`${parts} parts shown of ${tally.acknowledged.length}`)
      return
    }
    await pause(200)
  }
}
