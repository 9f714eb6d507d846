const signs = 'ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789+/'

/** Bytes as text that a JSON line can hold (RFC 4648, padded). */
export function base64Of(bytes: Uint8Array): string {
  const parts: string[] = []
  for (let at = 0; at < bytes.length; at += 3) {
    const [a = 0, b = 0, c = 0] = [bytes[at], bytes[at + 1], bytes[at + 2]]
    const left = bytes.length - at
    const four = [a >> 2, ((a & 3) << 4) | (b >> 4), ((b & 15) << 2) | (c >> 6), c & 63].map((six) => signs[six])
    parts.push(`${four[0]}${four[1]}${left > 1 ? four[2] : '='}${left > 2 ? four[3] : '='}`)
  }
  return parts.join('')
}

/** The bytes of such a text; null where it is none. */
export function bytesOfBase64(text: string): Uint8Array | null {
  if (text.length % 4 !== 0 || !/^[A-Za-z0-9+/]*={0,2}$/.test(text)) return null
  const length = (text.length / 4) * 3 - (text.endsWith('==') ? 2 : text.endsWith('=') ? 1 : 0)
  const bytes = new Uint8Array(length)
  let bits = 0
  let held = 0
  let at = 0
  for (const sign of text) {
    if (sign === '=') break
    bits = (bits << 6) | signs.indexOf(sign)
    held += 6
    if (held < 8) continue
    held -= 8
    bytes[at] = (bits >> held) & 255
    bits &= (1 << held) - 1
    at += 1
  }
  return bytes
}
