import { useEffect } from 'preact/hooks'
import { whenIdle } from '../../app/after-paint'

/** Keeps the words on the screen for the next start: with every step, and as they stand when the tablet is laid aside. */
export function useKeepSeen(stepId: string | null): void {
  useEffect(() => {
    const keeping = whenIdle()
      .then(() => import('../../app/start/keep-last-seen'))
      .then(({ keepSeen }) => keepSeen(document, () => localStorage))
    return () => void keeping.then((stop) => stop())
  }, [stepId])
}
