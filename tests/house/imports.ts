/** Every source file of the app with what it imports, resolved to files of the app or names of packages. */
import { existsSync, readFileSync } from 'node:fs'
import { dirname, join, normalize } from 'node:path'
import { codeOnly, pieces } from './source-text.ts'
import { filesUnder } from './sources.ts'

export interface SourceFile {
  readonly path: string
  /** The folder of src it stands in: `trade`, `places/run`, or the file's own name at the top. */
  readonly room: string
  readonly source: string
  readonly code: string
  readonly imports: readonly Import[]
}

export interface Import {
  readonly target: string
  /** Of a file of ours; undefined for a package. */
  readonly room: string | undefined
  readonly typesOnly: boolean
  readonly dynamic: boolean
}

export const readSources = (): readonly SourceFile[] =>
  filesUnder('src')
    .filter((path) => /\.(?:tsx?|css)$/.test(path))
    .map((path) => {
      const source = readFileSync(path, 'utf8')
      const isCss = path.endsWith('.css')
      return {
        path,
        room: roomOf(path),
        source,
        code: isCss ? source.replace(/\/\*[\s\S]*?\*\//g, ' ') : codeOnly(source),
        imports: isCss ? [] : importsOf(path, source),
      }
    })

export const roomOf = (path: string): string => {
  const [, first = '', second = ''] = path.split('/')
  return first === 'places' ? `places/${second}` : first
}

const statement =
  /\b(?:import|export)\s+(?<types>type\s+)?(?:(?<names>[\w*\s{},$]+?)\s+from\s*)?(?<mark>['"])(?<from>[^'"\n]+)\k<mark>/g
const call = /\bimport\s*\(\s*(?:\/\*[\s\S]*?\*\/\s*)?(['"])(?<from>[^'"\n]+)\1/g

const importsOf = (path: string, source: string): readonly Import[] => {
  const spoken = pieces(source)
    .filter(({ kind }) => kind !== 'comment')
    .map(({ text }) => text)
    .join('')
  const fixed = [...spoken.matchAll(statement)].map(({ groups }) => ({
    from: groups?.from ?? '',
    typesOnly: groups?.types !== undefined || namesOnlyTypes(groups?.names),
    dynamic: false,
  }))
  const asked = [...spoken.matchAll(call)].map(({ groups }) => ({
    from: groups?.from ?? '',
    typesOnly: false,
    dynamic: true,
  }))
  return [...fixed, ...asked].map(({ from, typesOnly, dynamic }) => {
    const target = from.startsWith('.') ? resolve(path, from) : from
    return { target, room: from.startsWith('.') ? roomOf(target) : undefined, typesOnly, dynamic }
  })
}

const namesOnlyTypes = (names: string | undefined): boolean => {
  const inside = /^\{([\s\S]*)\}$/.exec(names?.trim() ?? '')?.[1]
  if (inside === undefined) return false
  return inside.split(',').every((name) => name.trim() === '' || name.trim().startsWith('type '))
}

const endings = ['', '.ts', '.tsx', '/index.ts', '/index.tsx']

const resolve = (path: string, from: string): string => {
  const base = normalize(join(dirname(path), from.replace(/\?.*$/, '')))
  const ending = endings.find((each) => existsSync(base + each) && /\.\w+$/.test(base + each))
  return ending === undefined ? base : base + ending
}
