/// <reference lib="webworker" />
import { cacheNames } from 'workbox-core'
import { cleanupOutdatedCaches, createHandlerBoundToURL, precacheAndRoute } from 'workbox-precaching'
import { NavigationRoute, registerRoute } from 'workbox-routing'

declare const self: ServiceWorkerGlobalScope & { __WB_MANIFEST: { url: string; revision: string | null }[] }

/** What Chromium adds to the event (Service Worker Static Routing API, W3C), and the type library does not know yet. */
interface RoutedInstall extends ExtendableEvent {
  addRoutes?(
    rules: { readonly condition: { readonly urlPattern: string }; readonly source: { readonly cacheName: string } }[],
  ): Promise<void>
}

// Files that carry a hash come straight from the cache: a start waits for no worker to hand each of them over.
self.addEventListener('install', (event: RoutedInstall) => {
  const straight = event.addRoutes?.([
    { condition: { urlPattern: 'assets/*' }, source: { cacheName: cacheNames.precache } },
  ])
  // A browser that takes no such rule has this worker hand them over, as others do.
  if (straight !== undefined) event.waitUntil(straight.catch(() => undefined))
})

precacheAndRoute(self.__WB_MANIFEST)
cleanupOutdatedCaches()
registerRoute(new NavigationRoute(createHandlerBoundToURL('index.html')))

// So that the very first visit, too, goes on when the network is gone before a reload.
self.addEventListener('activate', (event) => event.waitUntil(self.clients.claim()))

// The new version takes over only when the page asks: never in the middle of a step.
self.addEventListener('message', (event) => {
  if (event.data === 'take-over') void self.skipWaiting()
})
