import { mkdirSync, mkdtempSync, writeFileSync } from 'node:fs'
import type { Server } from 'node:http'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, beforeAll, expect, it } from 'vitest'
import { serveFolder } from './serve.ts'

let server: Server
let origin: string

beforeAll(async () => {
  const folder = mkdtempSync(join(tmpdir(), 'pannikin-serve-'))
  mkdirSync(join(folder, '.vite'))
  writeFileSync(join(folder, 'index.html'), '<p>cup</p>')
  writeFileSync(join(folder, '_headers'), '/*\n  X-Content-Type-Options: nosniff\n')
  writeFileSync(join(folder, '.vite', 'manifest.json'), '{}')
  ;({ server, origin } = await serveFolder(folder, 0))
})
afterAll(() => void server.close())

it('serves the page at the root, with its headers', async () => {
  const answer = await fetch(`${origin}/`)
  expect([answer.status, await answer.text()]).toEqual([200, '<p>cup</p>'])
  expect(answer.headers.get('x-content-type-options')).toBe('nosniff')
  expect(answer.headers.get('content-type')).toContain('text/html')
})

it('[U6] answers 404, never the page, for what is missing or none of its business', async () => {
  for (const path of ['/assets/old.js', '/_headers', '/.vite/manifest.json', '/%2e%2e/package.json', '/%', '/run']) {
    expect((await fetch(`${origin}${path}`)).status, path).toBe(404)
  }
  expect((await fetch(`${origin}/`, { method: 'POST' })).status).toBe(405)
})
