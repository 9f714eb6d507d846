import { defineConfig } from '@playwright/test'
import { chromiumArguments, provideChromium } from '../house/chromium.ts'

const port = Number(process.env.BROWSER_PORT ?? 4188)

export default defineConfig({
  testDir: '.',
  outputDir: '../../test-results',
  workers: 2,
  fullyParallel: true,
  retries: 0,
  forbidOnly: true,
  timeout: 60_000,
  expect: { timeout: 5_000 },
  reporter: [['list'], ['json', { outputFile: '../../.cache/browser.json' }]],
  use: {
    baseURL: `http://127.0.0.1:${port}/`,
    viewport: { width: 1280, height: 800 },
    hasTouch: true,
    actionTimeout: 10_000,
    locale: 'en-GB',
    timezoneId: 'Europe/London',
    serviceWorkers: 'allow',
    screenshot: 'only-on-failure',
    trace: 'off',
    launchOptions: { executablePath: provideChromium(), args: chromiumArguments },
  },
  webServer: {
    command: 'npx tsx tests/house/serve.ts',
    cwd: '../..',
    env: { PORT: String(port) },
    url: `http://127.0.0.1:${port}/`,
    reuseExistingServer: false,
    gracefulShutdown: { signal: 'SIGTERM', timeout: 1000 },
  },
})
