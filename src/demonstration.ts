/** Where the demonstration stands in this build: a part of the composition root that is fetched when it is asked for. */
import batchesUrl from '../demo-data/batches.ndjson?url'
import catalogueUrl from '../demo-data/catalogue.json?url'
import type { App } from './app/app'
import { loadDemonstration } from './app/import/demonstration'
import type { Refusal } from './app/refusals'

export const loadHere = (app: App): Promise<Refusal | null> =>
  loadDemonstration(app, { catalogueUrl, batchesUrl, person: 'person-rk', studio: 'Quillwort Studio' })
