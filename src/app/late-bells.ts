import { effect, signal } from '@preact/signals'
import type { Bell, Bells } from './app'

/** The bells of this page, which come after the first screen: what is overdue rings from then on. */
export const lateBells = (coming: Promise<Bells>): Bells => {
  const ringing = signal<readonly Bell[]>([])
  void coming.then((bells) =>
    effect(() => {
      ringing.value = bells.ringing.value
    }),
  )
  return { ringing, stop: async (bell) => (await coming).stop(bell) }
}
