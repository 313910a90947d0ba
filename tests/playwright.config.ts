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
  // The journeys change one demo company, one after the other; beside them the screens are looked at, which changes nothing.
  workers: 2,
  projects: [
    { name: 'journeys', workers: 1, testIgnore: '**/accessibility.spec.ts' },
    { name: 'screens', workers: 1, testMatch: '**/accessibility.spec.ts' },
  ],
  forbidOnly: true,
  use: {
    baseURL: process.env.BASE_URL,
    locale: 'en-US',
    // Nothing moves by itself: what pulses is painted sixty times a second, without a graphics card by the processor.
    contextOptions: { reducedMotion: 'reduce' },
    // Recording every step slows the whole run: asked for with TRACE=1 when a test is red.
    trace: process.env.TRACE ? 'retain-on-failure' : 'off',
    screenshot: 'only-on-failure',
    launchOptions: {
      executablePath: process.env.CHROMIUM_PATH || undefined,
      args: ['--disable-background-networking', '--disable-component-update', '--disable-gpu', ...(asRoot ? ['--no-sandbox'] : [])],
    },
  },
})
