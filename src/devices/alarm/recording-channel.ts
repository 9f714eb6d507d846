import type { Channel } from './channel'

/** Not in the way of the first screen. */
const loadAfterMs = 3000

/**
 * The bell as a recording, for when Web Audio is dead. It is fetched whole: Safari asks media for byte ranges,
 * which a service worker's stored copy does not answer.
 */
export const recordingChannel = (url: string): Channel => {
  const audio = new Audio()
  audio.preload = 'none'
  let unlocked = false

  const load = async (): Promise<void> => {
    if (audio.src !== '') return
    const answer = await fetch(url)
    audio.src = answer.ok ? URL.createObjectURL(await answer.blob()) : url
  }
  const loadQuietly = (): Promise<void> =>
    load().catch(() => {
      audio.src = url
    })
  setTimeout(loadQuietly, loadAfterMs)

  const play = async (): Promise<boolean> => {
    if (audio.src === '') audio.src = url
    try {
      audio.currentTime = 0
      await audio.play()
      return true
    } catch {
      return false
    }
  }

  return {
    // The recording begins with a silence, so nobody hears this.
    unlock: async () => {
      if (unlocked) return true
      unlocked = await play()
      audio.pause()
      return unlocked
    },
    strike: async (stillWanted) => {
      const sounded = await play()
      if (!stillWanted()) audio.pause()
      return sounded
    },
    hush: () => audio.pause(),
  }
}
