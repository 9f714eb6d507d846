import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { headersFor, parseHeaders } from './headers.ts'

const rules = parseHeaders(readFileSync('public/_headers', 'utf8'))
const policyOf = (path: string): string =>
  headersFor(rules, path).find(({ name }) => name === 'Content-Security-Policy')?.value ?? ''
const inPage = /http-equiv="Content-Security-Policy" content="([^"]+)"/.exec(readFileSync('index.html', 'utf8'))?.[1]

describe('the headers file', () => {
  it('is read by path and star, and refuses a line that is neither', () => {
    const small = parseHeaders('# a remark\n/*\n  A: 1\n/assets/*\n  B: x, y\n')
    expect(headersFor(small, '/assets/a/b.js')).toEqual([
      { name: 'A', value: '1' },
      { name: 'B', value: 'x, y' },
    ])
    expect(headersFor(small, '/sw.js')).toEqual([{ name: 'A', value: '1' }])
    expect(() => parseHeaders('/*\n  nonsense\n')).toThrow('Line 2')
  })

  it('[U6] gives no path a header twice, as hosts would join the two', () => {
    for (const path of ['/', '/index.html', '/sw.js', '/assets/app.js', '/alarm.wav']) {
      const names = headersFor(rules, path).map(({ name }) => name)
      expect(new Set(names).size, path).toBe(names.length)
    }
  })

  it('[U6] has the page and the service worker asked for anew, and hashed files kept for good', () => {
    const keeping = (path: string) => headersFor(rules, path).find(({ name }) => name === 'Cache-Control')?.value
    expect(['/', '/index.html', '/sw.js'].map(keeping)).toEqual(Array(3).fill('max-age=0, must-revalidate'))
    expect(keeping('/assets/index-abc.js')).toContain('immutable')
  })

  it('[U5] allows nothing inline, no eval and no other origin, on every path', () => {
    for (const path of ['/', '/sw.js', '/assets/journal-worker.js']) {
      const policy = policyOf(path)
      expect(policy).toContain("require-trusted-types-for 'script'; trusted-types pannikin")
      expect(policy).not.toMatch(/unsafe|https?:|\*|wasm/)
    }
  })

  it('[U5] says in the page what it says in the header, save what a page cannot say', () => {
    expect(inPage).toBe(policyOf('/').replace("frame-ancestors 'none'; ", ''))
  })
})
