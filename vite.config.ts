import { readFileSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import preact from '@preact/preset-vite'
import { minifySync, type Plugin } from 'vite'
import { VitePWA } from 'vite-plugin-pwa'
import { configDefaults, defineConfig } from 'vitest/config'
import { packArchive } from './tests/house/demonstration/pack.ts'
import { buildId } from './tests/house/sources.ts'

const project = (name: string, include: string[], more: { isolate?: boolean; exclude?: string[] } = {}) => ({
  extends: true as const,
  test: { name, include, ...more },
})
/** Tests that put something in the place of what the browser or Node has: each file in a world of its own. */
const alone = [
  'tests/unit/{store,devices}/**/*.test.ts',
  'tests/unit/demonstration.test.ts',
  'tests/unit/app/device-key.test.ts',
  'tests/unit/app/import/bad-files.test.ts',
  'tests/unit/app/start/updates.test.ts',
  'tests/unit/places/records/{newer-kind,own-templates}.test.ts',
  'tests/unit/places/run/a-frame-behind.test.ts',
]

/** The development server puts scripts and styles inline, which the page's own policy would refuse. */
const policyOnlyInBuild: Plugin = {
  name: 'policy-only-in-build',
  apply: 'serve',
  transformIndexHtml: (html) => html.replace(/<meta http-equiv="Content-Security-Policy"[^>]*>/, ''),
}

/**
 * What the first screen needs is asked for before the script that the parser waits for, not when that has run; and with it
 * what keeps the two copies, which a start waits for next. Nothing is painted before the first script has run: it shows
 * what was last in hand.
 */
const askEarly: Plugin = {
  name: 'ask-early',
  apply: 'build',
  transformIndexHtml: {
    order: 'post',
    handler: (html, { bundle }) => {
      const copies = Object.values(bundle ?? {}).find((file) => file.type === 'chunk' && file.name === 'copies')
      if (copies === undefined) throw new Error('The build has no chunk of src/store/copies.ts.')
      const boot = /\s*<script src="[^"]*boot\.js"><\/script>/.exec(html)?.[0] ?? ''
      const ask = `\n    <link rel="modulepreload" crossorigin href="./${copies.fileName}">`
      return html
        .replace(boot, '')
        .replace('<script type="module"', '<script type="module" blocking="render"')
        .replace(/\s*<\/head>/, (end) => `${ask}${boot}${end}`)
    },
  },
}

/** Says, outside the precache, which build a folder holds. */
const buildFile = (id: string): Plugin => ({
  name: 'build-file',
  apply: 'build',
  generateBundle() {
    this.emitFile({ type: 'asset', fileName: 'build.json', source: `${JSON.stringify({ id })}\n` })
  },
})

/** The scripts that run whatever else fails are copied as they stand: only their comments and spaces go. */
const smallBoot: Plugin = {
  name: 'small-boot',
  apply: 'build',
  writeBundle({ dir = 'dist' }) {
    for (const name of ['boot.js', 'recovery.js']) {
      const file = join(dir, name)
      writeFileSync(file, minifySync(name, readFileSync(file, 'utf8')).code)
    }
  },
}

/** The demonstration's batches repeat their formulas and carry hashes: packed they are a third of it in the precache. */
const smallDemonstration: Plugin = {
  name: 'small-demonstration',
  apply: 'build',
  generateBundle(_, bundle) {
    for (const file of Object.values(bundle))
      if (file.type === 'asset' && file.fileName.endsWith('.ndjson'))
        file.source = packArchive(Buffer.from(file.source).toString())
  },
}

const id = buildId()

export default defineConfig({
  base: './',
  define: { __BUILD_ID__: JSON.stringify(id) },
  plugins: [
    preact(),
    policyOnlyInBuild,
    askEarly,
    buildFile(id),
    smallBoot,
    smallDemonstration,
    VitePWA({
      strategies: 'injectManifest',
      srcDir: 'src',
      filename: 'sw.ts',
      registerType: 'prompt',
      injectRegister: null,
      manifest: false,
      injectManifest: {
        globPatterns: ['**/*.{js,css,html,svg,png,woff2,webmanifest,json,ndjson,wav}'],
        globIgnores: ['_headers', 'build.json', '.vite/**', 'schemas/**'],
      },
    }),
  ],
  build: {
    target: 'es2022',
    sourcemap: false,
    assetsInlineLimit: 0,
    manifest: true,
    reportCompressedSize: false,
    // Styles of late parts are fetched beside them; their scripts ask for what they import by themselves.
    modulePreload: {
      polyfill: false,
      resolveDependencies: (_, needed) => needed.filter((file) => file.endsWith('.css')),
    },
    // What the first screen needs is one file, since everything that main.tsx imports at once comes with it.
    rolldownOptions: {
      output: {
        codeSplitting: {
          groups: [
            { name: 'app', test: /src\/main\.tsx$/, priority: 1 },
            { name: 'copies', test: /src\/store\/(?:copies|journal-client)\.ts$/ },
          ],
        },
        // Every late part's name stands in the first screen: a short hash tells it from others. The letter before it is
        // for hosts that leave out files whose name begins with an underscore.
        chunkFileNames: 'assets/p[hash:7].js',
        assetFileNames: 'assets/p[hash:7][extname]',
      },
    },
  },
  worker: { format: 'es' },
  test: {
    exclude: [...configDefaults.exclude, 'tests/browser/**'],
    projects: [
      // All others leave nothing behind, so that they can share what was loaded: a third of their time.
      project('unit', ['tests/unit/**/*.test.{ts,tsx}'], {
        isolate: false,
        exclude: [...configDefaults.exclude, ...alone],
      }),
      project('alone', alone),
      project('property', ['tests/property/**/*.test.ts'], { isolate: false }),
      project('vectors', ['tests/vectors/**/*.test.ts']),
      project('rules', ['tests/architecture.test.ts', 'tests/house/*.test.ts']),
    ],
  },
})
