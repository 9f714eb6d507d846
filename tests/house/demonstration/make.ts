/** Writes the demonstration files from the modules beside this one: `npm run demo`. */
import { writeFileSync } from 'node:fs'
import { batchesText, catalogueText, demonstrationBatches, momentText } from './files.ts'

const batches = demonstrationBatches()
writeFileSync('demo-data/catalogue.json', catalogueText())
writeFileSync('demo-data/batches.ndjson', batchesText(batches))
writeFileSync('demo-data/moment.json', momentText(batches))
