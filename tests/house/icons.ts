/** Renders the PNG icons from public/icons/cup.svg through Chromium. `npx tsx tests/house/icons.ts` */
import { readFileSync } from 'node:fs'
import { chromium } from '@playwright/test'
import { chromiumArguments, provideChromium } from './chromium.ts'

const drawing = readFileSync('public/icons/cup.svg', 'utf8')
const fullBleed = drawing.replace('rx="112" ', '')
// A mask may cut everything outside the middle 80 %.
const maskable = fullBleed
  .replace(
    /(<rect width="512" height="512"[^>]*>)/,
    '$1<g transform="translate(256 256) scale(.72) translate(-256 -262)">',
  )
  .replace('</svg>', '</g></svg>')

const icons = [
  { file: 'cup-192.png', size: 192, svg: drawing },
  { file: 'cup-512.png', size: 512, svg: drawing },
  { file: 'cup-maskable-192.png', size: 192, svg: maskable },
  { file: 'cup-maskable-512.png', size: 512, svg: maskable },
  { file: 'cup-180.png', size: 180, svg: fullBleed },
]

const browser = await chromium.launch({ executablePath: provideChromium(), args: chromiumArguments })
const page = await browser.newPage()
for (const { file, size, svg } of icons) {
  await page.setViewportSize({ width: size, height: size })
  await page.setContent(`<style>body { margin: 0 } svg { display: block; width: ${size}px }</style>${svg}`)
  await page.screenshot({ path: `public/icons/${file}`, omitBackground: true })
}
await browser.close()
