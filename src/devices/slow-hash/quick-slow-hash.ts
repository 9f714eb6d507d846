import type { SlowHash } from '../../ports/slow-hash'

/** Not slow and no secret: tells two texts, salts and counts apart, and counts its own salts. */
export const quickSlowHash = (): SlowHash => {
  let salts = 0
  return {
    newSalt: () => {
      salts += 1
      return String(salts).padStart(32, '0')
    },
    hash: async (secret, salt, iterations) => {
      const text = JSON.stringify([secret, salt, iterations])
      const bytes = Array.from({ length: 32 }, (_, at) =>
        Array.from(text).reduce((sum, sign, index) => (sum * 31 + sign.charCodeAt(0) * (index + at + 1)) % 256, at),
      )
      return bytes.map((byte) => byte.toString(16).padStart(2, '0')).join('')
    },
  }
}
