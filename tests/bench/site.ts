/** What the benches open: one server with the production build in one folder and pages to measure against in others. */
import { copyFileSync, cpSync, mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { dirname, join } from 'node:path'
import { fileURLToPath } from 'node:url'
import preact from '@preact/preset-vite'
import { build, type PluginOption } from 'vite'
import { VitePWA } from 'vite-plugin-pwa'
import { provideBuild } from '../house/build.ts'
import { serveFolder } from '../house/serve.ts'

/** Addresses of folders, each with a slash at its end. */
export interface Site {
  readonly app: string
  readonly empty: string
  readonly sums: string
  /** The least that recording in two copies costs. */
  readonly floor: string
  close(): void
}

const here = dirname(fileURLToPath(import.meta.url))

/** `built` is a folder with a production build; where none is given it is `dist`, made first if it is stale. */
export const openSite = async (built: string | undefined, port: number): Promise<Site> => {
  if (built === undefined) provideBuild()
  const root = mkdtempSync(join(tmpdir(), 'pannikin-bench-'))
  cpSync(built ?? 'dist', join(root, 'app'), { recursive: true })
  // The same policy and headers for all of them.
  copyFileSync(join(root, 'app', '_headers'), join(root, '_headers'))
  await buildPage('empty', root, [preact(), sameWorker()])
  await buildPage('sums', root, [])
  await buildPage('floor', root, [])
  const { server, origin } = await serveFolder(root, port)
  return {
    app: `${origin}/app/`,
    empty: `${origin}/empty/`,
    sums: `${origin}/sums/`,
    floor: `${origin}/floor/`,
    close: () => {
      server.close()
      server.closeAllConnections()
      rmSync(root, { recursive: true })
    },
  }
}

const buildPage = async (name: string, root: string, plugins: readonly PluginOption[]): Promise<void> => {
  await build({
    configFile: false,
    logLevel: 'error',
    root: join(here, name),
    base: './',
    plugins: [...plugins],
    build: {
      outDir: join(root, name),
      emptyOutDir: true,
      target: 'es2022',
      modulePreload: { polyfill: false },
      reportCompressedSize: false,
      assetsInlineLimit: 0,
    },
    worker: { format: 'es' },
  })
}

/** The app's own service worker, with the list of the other page. */
const sameWorker = (): PluginOption =>
  VitePWA({
    strategies: 'injectManifest',
    srcDir: '../../../src',
    filename: 'sw.ts',
    injectRegister: null,
    manifest: false,
    injectManifest: { globPatterns: ['**/*.{js,css,html}'] },
  })
