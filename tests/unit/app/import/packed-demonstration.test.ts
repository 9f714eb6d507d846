import { readFileSync } from 'node:fs'
import { gzipSync } from 'node:zlib'
import { expect, test } from 'vitest'
import { unpackArchive } from '../../../../src/app/import/unpack-archive'
import { packArchive } from '../../../house/demonstration/pack'

const text = readFileSync('demo-data/batches.ndjson', 'utf8')

test('[U39] the batches of the demonstration come out of the build as they went in, at half the bytes', () => {
  const packed = packArchive(text)
  expect(unpackArchive(packed)).toBe(text)
  expect(unpackArchive(text)).toBe(text)
  expect(gzipSync(packed).length).toBeLessThan(gzipSync(text).length / 2)
})

test('[U39] an entry that was changed is not packed', () => {
  expect(() => packArchive(text.replace('"temperatureC":', '"temperatureC":1'))).toThrow('is not whole')
})
