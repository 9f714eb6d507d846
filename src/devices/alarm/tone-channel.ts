import type { Channel } from './channel'

/** Tried as long before the other channel is used: an interrupted context may never settle its resume(). */
const patienceMs = 250

const tones = [
  { afterS: 0, frequencyHz: 880 },
  { afterS: 0.32, frequencyHz: 660 },
]
const ringS = 0.9

/** The bell made by Web Audio. Any state but `running` is taken as broken: resumed, else made anew. */
export const toneChannel = (): Channel => {
  let context: AudioContext | null = null
  let gain: GainNode | null = null

  const provideRunning = async (): Promise<AudioContext | null> => {
    context ??= new AudioContext()
    if (!isRunning(context)) await Promise.race([context.resume().catch(() => undefined), pause(patienceMs)])
    if (isRunning(context)) return context
    context.close().catch(() => undefined)
    context = new AudioContext()
    return isRunning(context) ? context : null
  }

  return {
    unlock: async () => {
      playThroughSilentSwitch()
      return (await provideRunning()) !== null
    },
    strike: async (stillWanted) => {
      const running = await provideRunning()
      if (running === null) return false
      if (!stillWanted()) return true
      gain = running.createGain()
      gain.connect(running.destination)
      for (const { afterS, frequencyHz } of tones) playTone(running, gain, running.currentTime + afterS, frequencyHz)
      return true
    },
    hush: () => gain?.disconnect(),
  }
}

const isRunning = (context: AudioContext): boolean => context.state === 'running'

const pause = (forMs: number): Promise<void> => new Promise((resolve) => setTimeout(resolve, forMs))

const playTone = (context: AudioContext, output: AudioNode, atS: number, frequencyHz: number): void => {
  const envelope = context.createGain()
  envelope.gain.setValueAtTime(0.0001, atS)
  envelope.gain.exponentialRampToValueAtTime(0.8, atS + 0.01)
  envelope.gain.exponentialRampToValueAtTime(0.0001, atS + ringS)
  envelope.connect(output)
  const oscillator = context.createOscillator()
  oscillator.frequency.value = frequencyHz
  oscillator.connect(envelope)
  oscillator.start(atS)
  oscillator.stop(atS + ringS)
}

/** On iOS a bell would obey the silent switch, as a game does, unless the page says that it plays on purpose. */
const playThroughSilentSwitch = (): void => {
  const session: unknown = 'audioSession' in navigator ? navigator.audioSession : undefined
  if (typeof session === 'object' && session !== null && 'type' in session) session.type = 'playback'
}
