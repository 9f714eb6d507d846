import type { SlowHash } from '../../ports/slow-hash'

/** PBKDF2 with SHA-256, by the browser itself. */
export const webSlowHash = (): SlowHash => ({
  newSalt: () => hexOf(crypto.getRandomValues(new Uint8Array(16))),
  hash: async (secret, salt, iterations) => {
    const encoder = new TextEncoder()
    const key = await crypto.subtle.importKey('raw', encoder.encode(secret), 'PBKDF2', false, ['deriveBits'])
    const how = { name: 'PBKDF2', hash: 'SHA-256', salt: encoder.encode(salt), iterations }
    return hexOf(new Uint8Array(await crypto.subtle.deriveBits(how, key, 256)))
  },
})

const hexOf = (bytes: Uint8Array): string => Array.from(bytes, (byte) => byte.toString(16).padStart(2, '0')).join('')
