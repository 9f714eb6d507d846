import { base64Of } from '../../batch/base64'
import { keyIdOf } from '../../batch/device-signature'
import type { DeviceKeys } from '../../ports/device-keys'

/** `unusable`: the kept key signs nothing. `without`: no arithmetic, as outside a secure context. */
export type KeysMood = 'well' | 'unusable' | 'without'

export interface SimulatedDeviceKeys extends DeviceKeys {
  setMood(mood: KeysMood): void
  /** As where the database was lost. */
  forget(): void
}

/** No secret: tells keys and texts apart, and counts its own keys. */
export function simulatedDeviceKeys(name = 'tablet'): SimulatedDeviceKeys {
  let mood: KeysMood = 'well'
  let made = 0
  let kept: string | null = null
  let turn: Promise<unknown> = Promise.resolve()
  const arithmetic = (): void => {
    if (mood === 'without') throw new TypeError('no subtle crypto')
  }
  const base64 = (text: string): string => base64Of(new TextEncoder().encode(text))
  const signatureOf = (key: string, text: string): string => base64(keyIdOf(base64(`${key} ${text}`)) ?? '')
  return {
    kept: async () => kept,
    make: async () => {
      arithmetic()
      made += 1
      mood = 'well'
      kept = base64(`${name} ${made}`)
      return kept
    },
    sign: async (text) => {
      arithmetic()
      if (kept === null || mood === 'unusable') throw new DOMException('no use', 'InvalidAccessError')
      return signatureOf(kept, text)
    },
    verify: async (key, text, signature) => {
      arithmetic()
      return signature === signatureOf(key, text)
    },
    inTurn: (task) => {
      const answer = turn.then(task)
      turn = answer.catch(() => undefined)
      return answer
    },
    setMood: (next) => {
      mood = next
    },
    forget: () => {
      kept = null
    },
  }
}
