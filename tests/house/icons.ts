/** Renders the PNG icons from public/icons/cup.svg through Chromium. `npx tsx tests/house/icons.ts` */
import { readFileSync, writeFileSync } from 'node:fs'
import { chromium } from '@playwright/test'
import { chromiumArguments, provideChromium } from './chromium.ts'
import { palettePng } from './png-palette.ts'

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
  const pixels = await page.evaluate(
    async ([source, edge]) => {
      const image = new Image(edge, edge)
      image.src = `data:image/svg+xml,${encodeURIComponent(source)}`
      await image.decode()
      const context = new OffscreenCanvas(edge, edge).getContext('2d')
      if (context === null) throw new Error('no canvas')
      context.drawImage(image, 0, 0, edge, edge)
      return [...context.getImageData(0, 0, edge, edge).data]
    },
    [svg, size] as const,
  )
  writeFileSync(`public/icons/${file}`, palettePng(Uint8Array.from(pixels), size, size))
}
await browser.close()
