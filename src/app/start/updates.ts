import { signal } from '@preact/signals'
import type { UpdateModel } from '../app'
import { buildId } from './build-id'

/** What the watch for updates touches, handed in by the composition root. */
export interface UpdateWorld {
  /** Absent on plain http and in some private windows: the app then works without updates. */
  readonly serviceWorker: ServiceWorkerContainer | undefined
  /** The trusted address of the service worker. */
  readonly scriptUrl: string
  readonly page: Pick<Document, 'addEventListener' | 'visibilityState'>
  readonly window: Pick<Window, 'addEventListener'>
  reload(): void
}

/** Some browsers never say that the new version has taken over. */
const reloadAfterMs = 2000

/**
 * Registers the service worker and looks for a new version at start and whenever the page comes back.
 * `waiting`: a new version is here, and nothing changes until `takeOver`. The first version of all takes over silently.
 */
export const watchForUpdates = (world: UpdateWorld): UpdateModel => {
  const waiting = signal(false)
  const { serviceWorker } = world
  let registration: ServiceWorkerRegistration | undefined
  let reloading = false

  const reloadOnce = (): void => {
    if (reloading) return
    reloading = true
    world.reload()
  }
  let asked = false

  const takeOver = (): void => {
    if (asked) return
    asked = true
    const next = registration?.waiting
    next?.postMessage('take-over')
    if (next == null) reloadOnce()
    else setTimeout(reloadOnce, reloadAfterMs)
  }

  const look = (): void => {
    // Offline, or the server is gone: what is here goes on.
    registration?.update().catch(() => undefined)
  }

  const follow = (found: ServiceWorkerRegistration, container: ServiceWorkerContainer): void => {
    registration = found
    const notice = (): void => {
      // Without a controller it is the first version that waits for nothing.
      if (found.waiting !== null && container.controller !== null) waiting.value = true
    }
    notice()
    found.addEventListener('updatefound', () => found.installing?.addEventListener('statechange', notice))
    found.installing?.addEventListener('statechange', notice)
    look()
  }

  if (serviceWorker !== undefined) {
    let controlled = serviceWorker.controller !== null
    serviceWorker.addEventListener('controllerchange', () => {
      if (asked) reloadOnce()
      // Another page of the app let the new version in: this one goes on, and reloads when its person wants to.
      else if (controlled) waiting.value = true
      controlled = true
    })
    serviceWorker.register(world.scriptUrl, { updateViaCache: 'none' }).then(
      (found) => follow(found, serviceWorker),
      // Refused: the app works as long as the network does, and says in Setup that it is not kept offline.
      () => undefined,
    )
    world.page.addEventListener('visibilitychange', () => {
      if (world.page.visibilityState === 'visible') look()
    })
    world.window.addEventListener('pageshow', look)
  }
  return { waiting, takeOver, buildId }
}
