/**
 * What runs first, before the rest of the first screen is even evaluated: it has the browser open the store, which takes
 * that a while, and shows what was last in hand.
 */
import './app/start/shell.css'
import { loadWriting } from './app/load-writing'
import { showLast } from './app/start/last-seen'
import { trustScriptUrls } from './app/start/trusted-urls'
import { webClock } from './devices/clock/web-clock'
import { uuidIds } from './devices/ids/uuid-ids'
import { eraseNote } from './store/erase-note'
import journalWorkerUrl from './store/journal-worker?worker&url'
import { openStore } from './store/open-store'

export const urls = trustScriptUrls(window.trustedTypes, { serviceWorker: './sw.js', journalWorker: journalWorkerUrl })
export const ids = uuidIds()
export const clock = webClock(async () => (await import('./devices/on-demand')).hearJumps)

const openHere = () =>
  openStore({
    workerUrl: urls.journalWorker,
    recordsSoon: location.hash.startsWith('#/run'),
    loadProject: async () => (await loadWriting()).projectStream,
    newId: () => ids.next(),
    now: async () => (await import('./batch/iso-of')).isoOf(clock.nowMs(), clock.offsetMinutes()),
  })

export const erasing = eraseNote.isLeft()
  ? import('./store/erase-here').then(({ eraseHereIfAsked }) => eraseHereIfAsked())
  : null
export const opening = erasing ? erasing.then(openHere) : openHere()
export const isLastShown = showLast(document, () => localStorage)
