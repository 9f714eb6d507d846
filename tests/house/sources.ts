/** What a build is made of, as one short name: the same sources give the same build id, so no update is offered for nothing. */
import { createHash } from 'node:crypto'
import { readdirSync, readFileSync, statSync } from 'node:fs'
import { join } from 'node:path'

const parts = ['src', 'public', 'demo-data', 'index.html', 'vite.config.ts', 'package-lock.json']

export const buildId = (): string => {
  const { version } = JSON.parse(readFileSync('package.json', 'utf8')) as { version: string }
  const hash = createHash('sha256')
  for (const file of parts.flatMap(filesUnder)) hash.update(file).update('\0').update(readFileSync(file)).update('\0')
  return `${version}-${hash.digest('hex').slice(0, 10)}`
}

/** Files of a folder and its folders, in order of name; a file stands for itself, a missing path for nothing. */
export const filesUnder = (path: string): string[] => {
  const found = statSync(path, { throwIfNoEntry: false })
  if (found === undefined) return []
  if (found.isFile()) return [path]
  return readdirSync(path)
    .sort()
    .flatMap((name) => filesUnder(join(path, name)))
}
