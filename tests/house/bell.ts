/**
 * Writes public/alarm.wav: two struck tones, 8 kHz, 8 bit, mono. `npx tsx tests/house/bell.ts`
 * It begins with a short silence: the first tap plays it and stops it at once, to be allowed to play it later.
 */
import { writeFileSync } from 'node:fs'

const samplesPerSecond = 8000
const tones = [
  { startS: 0.15, frequencyHz: 880 },
  { startS: 0.47, frequencyHz: 660 },
]
const lengthS = 1.75

const loudness = (atS: number): number =>
  tones.reduce((sum, { startS, frequencyHz }) => {
    const sinceS = atS - startS
    if (sinceS < 0) return sum
    const attack = Math.min(1, sinceS / 0.005)
    const ring =
      Math.sin(2 * Math.PI * frequencyHz * sinceS) + 0.4 * Math.sin(2 * Math.PI * 2.76 * frequencyHz * sinceS)
    return sum + attack * Math.exp(-3.2 * sinceS) * ring * 0.42
  }, 0)

const count = Math.round(samplesPerSecond * lengthS)
const fadeOut = (index: number): number => Math.min(1, (count - index) / (samplesPerSecond * 0.05))
const samples = Buffer.from(
  Array.from({ length: count }, (_, index) => {
    const value = Math.max(-1, Math.min(1, loudness(index / samplesPerSecond) * fadeOut(index)))
    return Math.round(127.5 + 127 * value)
  }),
)

const header = Buffer.alloc(44)
header.write('RIFF', 0)
header.writeUInt32LE(36 + count, 4)
header.write('WAVEfmt ', 8)
header.writeUInt32LE(16, 16)
header.writeUInt16LE(1, 20) // PCM
header.writeUInt16LE(1, 22) // one channel
header.writeUInt32LE(samplesPerSecond, 24)
header.writeUInt32LE(samplesPerSecond, 28) // bytes a second
header.writeUInt16LE(1, 32) // bytes a sample
header.writeUInt16LE(8, 34) // bits a sample
header.write('data', 36)
header.writeUInt32LE(count, 40)

writeFileSync('public/alarm.wav', Buffer.concat([header, samples]))
