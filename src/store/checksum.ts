const table = Uint32Array.from({ length: 256 }, (_, byte) => {
  let value = byte
  for (let bit = 0; bit < 8; bit++) value = value & 1 ? (value >>> 1) ^ 0xedb88320 : value >>> 1
  return value >>> 0
})

/** CRC-32 (IEEE 802.3, reflected) of `bytes`, as eight lower-case hex digits: tells a torn line from a whole one. */
export function crc32(bytes: Uint8Array): string {
  let crc = 0xffffffff
  for (const byte of bytes) crc = (crc >>> 8) ^ (table[(crc ^ byte) & 0xff] ?? 0)
  return hex32(crc ^ 0xffffffff)
}

/** The digest of a set of entries that holds nothing. */
export const emptySum = '0000000000000000'

/**
 * Digest of a set of entries: exclusive or of the first 64 bits of their hashes, so it does not depend on order and
 * takes one entry more (or less) without reading the others. Two copies with equal count and sum hold the same set.
 */
export function mixSum(sum: string, hash: string): string {
  const half = (at: number) =>
    hex32(Number.parseInt(sum.slice(at, at + 8), 16) ^ Number.parseInt(hash.slice(at, at + 8), 16))
  return half(0) + half(8)
}

const hex32 = (value: number): string => (value >>> 0).toString(16).padStart(8, '0')
