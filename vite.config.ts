import preact from '@preact/preset-vite'
import { VitePWA } from 'vite-plugin-pwa'
import { configDefaults, defineConfig } from 'vitest/config'

const project = (name: string, include: string[]) => ({ extends: true as const, test: { name, include } })

export default defineConfig({
  base: './',
  plugins: [
    preact(),
    VitePWA({
      strategies: 'injectManifest',
      srcDir: 'src',
      filename: 'sw.ts',
      registerType: 'prompt',
      injectRegister: null,
      manifest: false,
      injectManifest: { globPatterns: ['**/*.{js,css,html,svg,png,woff2,webmanifest,json,ndjson,wav}'], globIgnores: ['_headers'] },
    }),
  ],
  build: { target: 'es2022', modulePreload: { polyfill: false }, sourcemap: false },
  worker: { format: 'es' },
  test: {
    exclude: [...configDefaults.exclude, 'tests/browser/**'],
    projects: [
      project('unit', ['tests/unit/**/*.test.{ts,tsx}']),
      project('property', ['tests/property/**/*.test.ts']),
      project('vectors', ['tests/vectors/**/*.test.ts']),
      project('rules', ['tests/architecture.test.ts', 'tests/house/*.test.ts']),
    ],
  },
})
