import { readFileSync } from 'node:fs'
import { expect, it } from 'vitest'
import { codeOnly, pieces } from './source-text.ts'
import { filesUnder } from './sources.ts'

it('keeps code, and cuts comments, strings and patterns', () => {
  const code = codeOnly(`const a = 'Date' // Date\nconst b = /Date[/'"]/.test(x) /* Date */ + 6 / 2 / 1`)
  expect(code).not.toContain('Date')
  expect(code).toContain('6 / 2 / 1')
})

it('keeps the code inside template strings', () => {
  // biome-ignore lint/suspicious/noTemplateCurlyInString: the template is what is read
  const code = codeOnly('`Date ${fetch({ a: `${crypto}` })} Date` + tail')
  expect(code).not.toContain('Date')
  expect(code).toMatch(/fetch[\s\S]*crypto[\s\S]*tail/)
})

it('loses no character of any file of the project', () => {
  for (const file of filesUnder('src').filter((name) => /\.tsx?$/.test(name))) {
    const source = readFileSync(file, 'utf8')
    expect(
      pieces(source)
        .map(({ text }) => text)
        .join(''),
      file,
    ).toBe(source)
  }
})
