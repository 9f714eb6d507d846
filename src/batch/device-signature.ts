import { sha256 } from '@noble/hashes/sha2.js'
import { bytesToHex } from '@noble/hashes/utils.js'
import { bytesOfBase64 } from './base64'

/** What the key of a tablet says of a batch: that its log ended with this entry there. It names no person. */
export interface DeviceSigned {
  /** The hash of the entry that the log ended with. */
  readonly head: string
  /** SHA-256 (hex) of the public key. */
  readonly key: string
  /** SPKI, base64: with it any tablet verifies the signature. */
  readonly publicKey: string
  /** ECDSA over P-256 with SHA-256, r and s in base64, of `signedText`. */
  readonly signature: string
}

/** The very text that is signed: of which batch, and how its log ended. */
export const signedText = (stream: string, head: string): string => `pannikin head\n${stream}\n${head}`

/** Null where the text is no key. */
export function keyIdOf(publicKey: string): string | null {
  const bytes = bytesOfBase64(publicKey)
  return bytes === null || bytes.length === 0 ? null : bytesToHex(sha256(bytes))
}
