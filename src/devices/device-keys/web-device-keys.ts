import { base64Of, bytesOfBase64 } from '../../batch/base64'
import type { DeviceKeys, KeyShelf } from '../../ports/device-keys'

const curve = { name: 'ECDSA', namedCurve: 'P-256' } as const
const how = { name: 'ECDSA', hash: 'SHA-256' } as const

/** ECDSA by the browser itself; what is kept of the private half cannot be taken out of it. */
export const webDeviceKeys = (shelf: KeyShelf): DeviceKeys => ({
  kept: async () => (await shelf.read())?.publicKey ?? null,
  make: async () => {
    const pair = await crypto.subtle.generateKey(curve, false, ['sign', 'verify'])
    const publicKey = base64Of(new Uint8Array(await crypto.subtle.exportKey('spki', pair.publicKey)))
    await shelf.keep({ publicKey, privateKey: pair.privateKey })
    return publicKey
  },
  sign: async (text) => {
    const kept = await shelf.read()
    if (kept === null) throw new Error('no key is kept here')
    return base64Of(new Uint8Array(await crypto.subtle.sign(how, kept.privateKey, bytesOf(text))))
  },
  verify: async (publicKey, text, signature) => {
    const { subtle } = crypto
    const [spki, signed] = [bytesOfBase64(publicKey), bytesOfBase64(signature)]
    if (spki === null || signed === null) return false
    const key = await subtle.importKey('spki', Uint8Array.from(spki), curve, false, ['verify']).catch(() => null)
    return key !== null && subtle.verify(how, key, Uint8Array.from(signed), bytesOf(text))
  },
  inTurn: (task) => shelf.inTurn(task),
})

const bytesOf = (text: string) => new TextEncoder().encode(text)
