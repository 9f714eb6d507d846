/** Watches what a browser does beside what a test asks of it: requests that leave the origin, policy breaches, crashes. */
import type { BrowserContext, ConsoleMessage, Request, WebError } from '@playwright/test'

/** What went wrong so far; empty is good. Pages, workers and the service worker are watched alike. */
export const watchContext = (context: BrowserContext, origin: string): string[] => {
  const wrongs: string[] = []
  context.on('request', (request: Request) => {
    if (leaves(request.url(), origin)) wrongs.push(`asked another origin: ${request.url()}`)
  })
  context.on('weberror', (error: WebError) => wrongs.push(`threw: ${error.error().message}`))
  context.on('console', (message: ConsoleMessage) => {
    if (/Content Security Policy|TrustedScript|Trusted Type/i.test(message.text())) wrongs.push(message.text())
  })
  return wrongs
}

/** Addresses that a page makes by itself never reach a network. */
const leaves = (url: string, origin: string): boolean =>
  !/^(?:data|blob|about):/.test(url) && new URL(url).origin !== origin
