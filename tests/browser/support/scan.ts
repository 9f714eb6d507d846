/** What a scanner reads off the page. */
import type { Locator, Page } from '@playwright/test'
import { scanned } from '../../support/scan.ts'

/** Pixels for each one of the page: about what a printer of 400 dpi draws. */
const fine = 4

/** The text of the code in a part of the page as it is drawn; null where no code is found. */
export async function scan(page: Page, part: Locator): Promise<string | null> {
  await part.scrollIntoViewIfNeeded()
  const { x, y, width, height } = await part.evaluate((element) => {
    const box = element.getBoundingClientRect()
    return { x: box.x + scrollX, y: box.y + scrollY, width: box.width, height: box.height }
  })
  const session = await page.context().newCDPSession(page)
  const { data } = await session.send('Page.captureScreenshot', { clip: { x, y, width, height, scale: fine } })
  await session.detach()
  const drawn = await page.evaluate(async (url) => {
    const image = new Image()
    image.src = url
    await image.decode()
    const canvas = document.createElement('canvas')
    canvas.width = image.width
    canvas.height = image.height
    const context = canvas.getContext('2d')
    context?.drawImage(image, 0, 0)
    const pixels = context?.getImageData(0, 0, image.width, image.height).data ?? []
    // As one text: a list of a million numbers takes its time between page and test.
    return {
      width: image.width,
      height: image.height,
      text: Array.from(pixels, (byte) => String.fromCharCode(byte)).join(''),
    }
  }, `data:image/png;base64,${data}`)
  return scanned({ ...drawn, data: Uint8ClampedArray.from(drawn.text, (sign) => sign.charCodeAt(0)) })
}
