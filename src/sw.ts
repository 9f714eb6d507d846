/// <reference lib="webworker" />
import { cleanupOutdatedCaches, createHandlerBoundToURL, precacheAndRoute } from 'workbox-precaching'
import { NavigationRoute, registerRoute } from 'workbox-routing'

declare const self: ServiceWorkerGlobalScope & { __WB_MANIFEST: { url: string; revision: string | null }[] }

precacheAndRoute(self.__WB_MANIFEST)
cleanupOutdatedCaches()
registerRoute(new NavigationRoute(createHandlerBoundToURL('index.html')))

// So that the very first visit, too, goes on when the network is gone before a reload.
self.addEventListener('activate', (event) => event.waitUntil(self.clients.claim()))

// The new version takes over only when the page asks: never in the middle of a step.
self.addEventListener('message', (event) => {
  if (event.data === 'take-over') void self.skipWaiting()
})
