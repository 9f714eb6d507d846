import { encode } from 'uqr'
import { expect, test } from 'vitest'
import { qrPath } from '../../../src/parts/qr-path.ts'

test('[E69] the code that is drawn has the dark modules of its text, and no other', () => {
  const text = 'QW-LOT-01-041 84 sha-256 b6b0423983ce'
  const { data } = encode(text, { ecc: 'M', border: 4 })
  const { d, size } = qrPath(text)
  const drawn = data.map((row) => row.map(() => false))
  for (const [, x, y, width] of d.matchAll(/M(\d+) (\d+)h(\d+)v1H\1z/g))
    for (let column = Number(x); column < Number(x) + Number(width); column++) {
      const row = drawn[Number(y)]
      if (row) row[column] = true
    }
  expect(drawn).toEqual(data)
  expect(data.flat().some((dark) => dark)).toBe(true)
  expect(size).toBe(data.length)
})
