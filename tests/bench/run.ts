/**
 * `npm run bench`: what the app must keep to, measured in Chromium on the production build. Prints one JSON object.
 * `--only name` runs one section, `--build folder` takes a build that is there. Exits 1 where a budget is missed.
 */
import { parseArgs } from 'node:util'
import { benchEditor } from './editor.ts'
import { benchFold } from './fold.ts'
import { benchFormulas } from './formulas.ts'
import { benchMany } from './many.ts'
import { benchRecord } from './record.ts'
import { runRemedyBench } from './remedy.ts'
import { openSite, type Site } from './site.ts'
import { benchStart } from './start.ts'

const sections: Readonly<Record<string, (site: Site) => Promise<object>>> = {
  start: benchStart,
  record: benchRecord,
  fold: benchFold,
  formulas: benchFormulas,
  editor: benchEditor,
  many: benchMany,
  remedies: runRemedyBench,
}

const { values } = parseArgs({
  options: { only: { type: 'string' }, build: { type: 'string' }, port: { type: 'string', default: '5197' } },
})
const chosen = values.only === undefined ? Object.keys(sections) : values.only.split(',')
const site = await openSite(values.build, Number(values.port))
const results: Record<string, object> = {}
try {
  for (const name of chosen) {
    const section = sections[name]
    if (section === undefined) throw new Error(`There is no section ${name}: ${Object.keys(sections).join(', ')}`)
    const startedMs = performance.now()
    results[name] = await section(site)
    console.error(`${name}: ${Math.round((performance.now() - startedMs) / 1000)} s`)
  }
} finally {
  site.close()
}
console.log(JSON.stringify(results, null, 1))
process.exit(JSON.stringify(results).includes('"within":false') ? 1 : 0)
