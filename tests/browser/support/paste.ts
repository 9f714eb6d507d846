import type { Locator } from '@playwright/test'

/** What a spreadsheet puts on the clipboard, given to the page as a paste gives it. */
export async function pasteText(field: Locator, text: string): Promise<void> {
  await field.focus()
  await field.evaluate((element, cells) => {
    const clipboardData = new DataTransfer()
    clipboardData.setData('text/plain', cells)
    element.dispatchEvent(new ClipboardEvent('paste', { clipboardData, bubbles: true, cancelable: true }))
  }, text)
}
