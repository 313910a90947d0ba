import path from 'node:path'
import { defineConfig } from '@playwright/test'

const results = path.resolve(import.meta.dirname, '../test-results')
const asRoot = process.getuid?.() === 0

// Run by `npm test`, which starts web, worker and a database with the demo, and sets BASE_URL and the database's addresses.
export default defineConfig({
  testDir: 'browser',
  outputDir: path.join(results, 'browser'),
  reporter: [['list'], ['json', { outputFile: path.join(results, 'browser.json') }]],
  timeout: 60_000,
  expect: { timeout: 10_000 },
  retries: 0, // a retry would hide a flake
  workers: 1, // the journeys share one demo company
  forbidOnly: true,
  use: {
    baseURL: process.env.BASE_URL,
    locale: 'en-US',
    trace: 'retain-on-failure',
    screenshot: 'only-on-failure',
    launchOptions: {
      executablePath: process.env.CHROMIUM_PATH || undefined,
      args: ['--disable-background-networking', '--disable-component-update', ...(asRoot ? ['--no-sandbox'] : [])],
    },
  },
})
