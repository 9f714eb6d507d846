/**
 * The least that recording in two copies costs here: on a tap one entry and its head go into a strict transaction, then
 * a line into a flushed file, then a row says so. No rules, no sums, no other row.
 */

import { trustScriptUrls } from '../../../src/app/start/trusted-urls'
import workerUrl from './worker?worker&url'

const { journalWorker } = trustScriptUrls(window.trustedTypes, { serviceWorker: '', journalWorker: workerUrl })
const worker = new Worker(journalWorker, { type: 'module' })
const entry = { text: 'x'.repeat(700) }
let entries = 0

const opening = indexedDB.open('floor', 1)
opening.onupgradeneeded = () => {
  opening.result.createObjectStore('events')
  opening.result.createObjectStore('heads')
}

const row = document.getElementById('row') as HTMLElement
document.getElementById('record')?.addEventListener('click', () => {
  entries += 1
  const transaction = opening.result.transaction(['events', 'heads'], 'readwrite', { durability: 'strict' })
  transaction.objectStore('events').add(entry, entries)
  transaction.objectStore('heads').put(entry, 'head')
  transaction.commit()
  transaction.oncomplete = () => worker.postMessage(JSON.stringify(entry))
})
worker.addEventListener('message', () => {
  row.dataset.entry = String(entries)
  row.dataset.state = 'recorded'
  row.textContent = `${entries} recorded`
})
