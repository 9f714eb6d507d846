/** `npm run budgets`: weighs the build in `dist` against its budgets. Prints a table and JSON; exits 1 where one is missed. */
import { existsSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { gzipSync } from 'node:zlib'

interface Chunk {
  readonly file: string
  readonly imports?: readonly string[]
  readonly dynamicImports?: readonly string[]
  readonly css?: readonly string[]
}

interface Budget {
  readonly what: string
  readonly files: readonly string[]
  readonly limitBytes: number
}

const budgets = (): readonly Budget[] => {
  const chunks = JSON.parse(readFileSync('dist/.vite/manifest.json', 'utf8')) as Record<string, Chunk>
  return [
    { what: 'JavaScript to show Bench and Run', files: neededFiles(chunks), limitBytes: 50_000 },
    { what: 'whole precache', files: precachedFiles(), limitBytes: 700_000 },
  ]
}

/**
 * The scripts of index.html, the views of Bench and Run where these load them by themselves, and all that they import at
 * once. What is fetched afterwards (the rules of writing, cards of other steps, sheets) is not needed to show them.
 */
const neededFiles = (chunks: Readonly<Record<string, Chunk>>): readonly string[] => {
  const page = readFileSync('dist/index.html', 'utf8')
  const scripts = [...page.matchAll(/<script\b[^>]*\bsrc="\.\/([^"]+)"/g)].flatMap(([, file = '']) => file)
  const entries = Object.keys(chunks).filter((key) => scripts.includes(chunks[key]?.file ?? ''))
  if (entries.length === 0) throw new Error('index.html loads no script that the build knows.')
  const atStart = withImports(chunks, entries)
  const late = atStart.flatMap((key) => chunks[key]?.dynamicImports ?? [])
  const places = late.filter((key) => /^src\/places\/(?:bench|run)\/view\./.test(key))
  const keys = withImports(chunks, [...entries, ...places])
  return [...new Set([...scripts, ...keys.flatMap((key) => chunks[key]?.file ?? [])])]
}

const withImports = (chunks: Readonly<Record<string, Chunk>>, from: readonly string[]): readonly string[] => {
  const found = new Set<string>()
  const visit = (key: string): void => {
    if (found.has(key)) return
    found.add(key)
    for (const next of chunks[key]?.imports ?? []) visit(next)
  }
  for (const key of from) visit(key)
  return [...found]
}

/** What the service worker stores, read from the service worker itself. */
const precachedFiles = (): readonly string[] => {
  const worker = readFileSync('dist/sw.js', 'utf8')
  const files = [...worker.matchAll(/[{,]"?url"?:\s*["'`]([^"'`]+)["'`]/g)].map(([, url = '']) => url)
  if (!files.includes('index.html')) throw new Error('The service worker stores no index.html: its list was not found.')
  return [...new Set(files)]
}

const weighed = (file: string): { file: string; gzipBytes: number } => ({
  file,
  gzipBytes: gzipSync(readFileSync(join('dist', file))).length,
})

if (!existsSync('dist/.vite/manifest.json')) throw new Error('There is no build yet: npm run build')
const results = budgets().map(({ what, files, limitBytes }) => {
  const parts = files.map(weighed).sort((one, other) => other.gzipBytes - one.gzipBytes)
  const gzipBytes = parts.reduce((sum, part) => sum + part.gzipBytes, 0)
  return { what, gzipBytes, limitBytes, within: gzipBytes <= limitBytes, parts }
})

const kilobytes = (bytes: number): string => (bytes / 1000).toFixed(1).padStart(7)
for (const { what, gzipBytes, limitBytes, within, parts } of results) {
  console.log(`${within ? 'within' : 'OVER  '} ${kilobytes(gzipBytes)} of ${kilobytes(limitBytes)} kB  ${what}`)
  for (const part of parts) console.log(`       ${kilobytes(part.gzipBytes)}                ${part.file}`)
}
console.log(JSON.stringify(results.map(({ parts, ...total }) => ({ ...total, files: parts.length }))))
process.exit(results.every(({ within }) => within) ? 0 : 1)
