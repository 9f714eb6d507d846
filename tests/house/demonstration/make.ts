/** Writes the demonstration files from the modules beside this one: `npm run demo`. */
import { writeFileSync } from 'node:fs'
import { catalogueText } from './files.ts'

writeFileSync('demo-data/catalogue.json', catalogueText())
