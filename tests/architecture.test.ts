import { existsSync, readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { type Import, readSources, type SourceFile } from './house/imports.ts'
import { filesUnder } from './house/sources.ts'

const sources = readSources()
const scripts = sources.filter(({ path }) => !path.endsWith('.css'))
/** The composition root: what runs first, the app, and what comes when it is asked for. */
const roots: readonly string[] = ['src/begin.ts', 'src/main.tsx', 'src/demonstration.ts']
const isRoot = ({ path }: SourceFile): boolean => roots.includes(path)
const own = scripts.filter((file) => !isRoot(file))

/** Which rooms a room may import besides itself. A place may not import another place. */
const doors: Readonly<Record<string, readonly string[]>> = {
  trade: [],
  batch: ['trade'],
  ports: ['batch', 'trade'],
  store: ['ports', 'batch', 'trade'],
  devices: ['ports', 'batch', 'trade'],
  app: ['ports', 'batch', 'trade', 'parts'],
  parts: ['trade'],
  places: ['app', 'parts', 'batch', 'trade'],
  'sw.ts': [],
}

/** A rule stands as its sentence; whoever breaks it reads it beside the place. */
const rule = (sentence: string, violations: () => readonly string[]): void => {
  it(sentence, () => {
    const found = violations()
    expect(found, `${sentence}\n  ${found.join('\n  ')}\n`).toEqual([])
  })
}

const importing = (files: readonly SourceFile[], broken: (file: SourceFile, each: Import) => boolean): string[] =>
  files.flatMap((file) =>
    file.imports.filter((each) => broken(file, each)).map(({ target }) => `${file.path} imports ${target}`),
  )

const containing = (files: readonly SourceFile[], pattern: RegExp): string[] =>
  files.flatMap(({ path, code }) => [...code.matchAll(pattern)].map(([found]) => `${path}: ${found.trim()}`))

const isPackage = (each: Import, name: string): boolean => each.target === name || each.target.startsWith(`${name}/`)

describe('who may import whom', () => {
  for (const [room, allowed] of Object.entries(doors)) {
    const sentence = `${room} imports nothing of ours but ${['its own', ...allowed].join(', ')}`
    rule(sentence, () =>
      importing(
        own.filter((file) => file.room.split('/')[0] === room),
        (file, each) => each.room !== undefined && each.room !== file.room && !allowed.includes(each.room),
      ),
    )
  }
  rule('every file of src stands in a room, or is of the composition root, or sw.ts', () =>
    own.filter(({ room }) => doors[room.split('/')[0] ?? ''] === undefined).map(({ path }) => path),
  )
  rule('the composition root is imported by itself alone', () =>
    importing(own, (_, { target }) => roots.includes(target)),
  )
  // So the browser tests try only the rules about colours in the dark as well.
  rule('light and dark differ in colours alone: no style but the tokens and what is printed knows of them', () =>
    containing(
      sources.filter(({ path }) => path.endsWith('.css') && !/tokens\.css$|print\.css$/.test(path)),
      /prefers-color-scheme|data-theme/g,
    ),
  )
  rule('ports import types only', () =>
    importing(
      scripts.filter(({ room }) => room === 'ports'),
      (_, each) => !each.typesOnly,
    ),
  )
  rule('ports hold interfaces only', () =>
    containing(
      scripts.filter(({ room }) => room === 'ports'),
      /^export (?:const|let|function|class|async).*$/gm,
    ),
  )
  rule('imports go round in no circle', circles)
  rule('only store imports idb', () =>
    importing(scripts, ({ room }, each) => room !== 'store' && isPackage(each, 'idb')),
  )
  rule('only trade/arithmetic.ts imports mathjs, and only trade/load-arithmetic.ts imports that, dynamically', () => [
    ...importing(
      scripts,
      ({ path }, each) => isPackage(each, 'mathjs') && !each.typesOnly && path !== 'src/trade/arithmetic.ts',
    ),
    ...importing(
      scripts,
      ({ path }, each) =>
        each.target === 'src/trade/arithmetic.ts' && !(path === 'src/trade/load-arithmetic.ts' && each.dynamic),
    ),
  ])
  rule('only trade/solve.ts imports the solver', () =>
    importing(scripts, ({ path }, each) => path !== 'src/trade/solve.ts' && isPackage(each, 'yalps')),
  )
})

describe('who may touch what', () => {
  rule('only devices touch navigator; store may use its storage and locks, main.tsx its serviceWorker', () => [
    ...containing(
      own.filter(({ room }) => room !== 'devices' && room !== 'store'),
      /\bnavigator\b.*/g,
    ),
    ...containing(
      scripts.filter(({ room }) => room === 'store'),
      /\bnavigator\b(?!\??\.(?:storage|locks)\b).*/g,
    ),
    ...containing(scripts.filter(isRoot), /\bnavigator\b(?!\??\.serviceWorker\b).*/g),
  ])
  rule('the sums are pure: no clock, randomness, network, timer, crypto or storage in trade and batch', () =>
    containing(
      scripts.filter(({ room }) => room === 'trade' || room === 'batch'),
      /(?<![.\w$'-])(?:Date|fetch|setTimeout|setInterval|crypto|localStorage|sessionStorage|indexedDB|caches|performance)\b(?!\s*\??:)|\bMath\.random\b/g,
    ),
  )
  rule('the service worker holds no database', () =>
    containing(
      scripts.filter(({ path }) => path === 'src/sw.ts'),
      /\bindexedDB\b/g,
    ),
  )
  rule('only trusted-urls.ts makes a Trusted Types policy', () =>
    containing(
      scripts.filter(({ path }) => path !== 'src/app/start/trusted-urls.ts'),
      /\bcreatePolicy\b/g,
    ),
  )
  rule('no innerHTML and its kin, no eval', () =>
    containing(
      scripts,
      /\b(?:dangerouslySetInnerHTML|(?:inner|outer)HTML|insertAdjacentHTML|eval\s*\(|new Function)\b/g,
    ),
  )
  rule('no module-level let outside the composition root', () => containing(own, /^(?:export )?let .*$/gm))
})

describe('how files are kept', () => {
  rule('colours are written in tokens.css only', () =>
    sources
      .filter(({ path }) => path !== 'src/app/tokens.css')
      .flatMap(({ path, source }) =>
        [...withoutComments(path, source).matchAll(colour)].map(([found]) => `${path}: ${found}`),
      ),
  )
  rule('a file of 250 lines and more says why in its first line', () =>
    [...filesUnder('src'), ...filesUnder('tests')]
      .filter((path) => /\.(?:tsx?|css)$/.test(path))
      .map((path) => ({ path, lines: readFileSync(path, 'utf8').trimEnd().split('\n') }))
      .filter(({ lines }) => lines.length > 250 && !/^\/[/*].*\blong\b.*because/i.test(lines[0] ?? ''))
      .map(({ path, lines }) => `${path}: ${lines.length} lines`),
  )
  rule('files are named in kebab-case', () =>
    sources
      .map(({ path }) => path)
      .filter((path) => path.split('/').some((part) => !/^[a-z0-9-]+(?:\.[a-z0-9-]+)*$/.test(part))),
  )
})

describe('promise and proof', () => {
  const promised = existsSync('DEVELOPERS.md')
    ? new Set([...readFileSync('DEVELOPERS.md', 'utf8').matchAll(/^\s*- \*\*([A-Z]\d+)\*\*/gm)].map(([, id]) => id))
    : undefined
  const proved = new Map<string, string>()
  for (const path of filesUnder('tests').filter((name) => /\.(?:test|spec)\.tsx?$/.test(name))) {
    for (const [, ids = ''] of readFileSync(path, 'utf8').matchAll(/['"`]((?:\[[A-Z]\d+\]\s*)+)/g)) {
      for (const [, id = ''] of ids.matchAll(/\[([A-Z]\d+)\]/g)) proved.set(id, path)
    }
  }
  rule('every numbered rule of DEVELOPERS.md has a test whose name begins with its id', () =>
    [...(promised ?? [])].filter((id) => id !== undefined && !proved.has(id)).map((id) => `no test names [${id}]`),
  )
  rule('every id in a test name stands in DEVELOPERS.md', () =>
    promised === undefined
      ? []
      : [...proved].filter(([id]) => !promised.has(id)).map(([id, path]) => `[${id}] in ${path}`),
  )
})

const colour = /#(?:[0-9a-f]{8}|[0-9a-f]{6}|[0-9a-f]{3,4})\b(?!-)|\b(?:rgba?|hsla?|hwb|lab|lch|oklab|oklch)\(/gi

function withoutComments(path: string, source: string): string {
  const bare = source.replace(/\/\*[\s\S]*?\*\//g, ' ')
  return path.endsWith('.css') ? bare : bare.replace(/(^|\s)\/\/.*$/gm, ' ')
}

/** Each circle once, as the way round. Types vanish before anything runs, but a circle of types is a circle of ideas. */
function circles(): string[] {
  const files = new Map(scripts.map((file) => [file.path, file]))
  const done = new Set<string>()
  const found: string[] = []
  const walk = (path: string, trail: readonly string[]): void => {
    const seenAt = trail.indexOf(path)
    if (seenAt !== -1) found.push([...trail.slice(seenAt), path].join(' → '))
    if (seenAt !== -1 || done.has(path)) return
    for (const { target } of files.get(path)?.imports ?? []) if (files.has(target)) walk(target, [...trail, path])
    done.add(path)
  }
  for (const path of files.keys()) walk(path, [])
  return found
}
