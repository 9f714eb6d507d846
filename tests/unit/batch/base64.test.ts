import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { base64Of, bytesOfBase64 } from '../../../src/batch/base64'

const bytesOf = (text: string) => new TextEncoder().encode(text)

describe('bytes as text', () => {
  test.each([
    ['', ''],
    ['f', 'Zg=='],
    ['fo', 'Zm8='],
    ['foo', 'Zm9v'],
    ['foob', 'Zm9vYg=='],
    ['fooba', 'Zm9vYmE='],
    ['foobar', 'Zm9vYmFy'],
  ])('[E87] "%s" is written as RFC 4648 does, and read again', (plain, text) => {
    expect(base64Of(bytesOf(plain))).toBe(text)
    expect(bytesOfBase64(text)).toEqual(bytesOf(plain))
  })

  test.each(['Zg', 'Zg=', 'Z===', 'Zm9v Zg', 'Zm-_', '=Zg='])('[E87] "%s" is no such text', (text) => {
    expect(bytesOfBase64(text)).toBeNull()
  })

  test('[E87] every byte comes back', () => {
    fc.assert(
      fc.property(fc.uint8Array(), (bytes) => {
        expect(bytesOfBase64(base64Of(bytes))).toEqual(bytes)
      }),
    )
  })
})
