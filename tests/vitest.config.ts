import os from 'node:os'
import path from 'node:path'
import { defineConfig } from 'vitest/config'

export default defineConfig({
  // As the web app's own compiler reads it: its routes are tried in process.
  resolve: { alias: { '@': path.resolve(import.meta.dirname, '../apps/web') } },
  test: {
    root: path.resolve(import.meta.dirname, '..'),
    globalSetup: ['tests/support/test-cluster.mjs'],
    testTimeout: 60_000,
    hookTimeout: 60_000,
    // What a library calls deprecated is an error in its next version: here it is one already.
    execArgv: ['--throw-deprecation'],
    // Left to itself it keeps one core free, which of two cores is half: half of the tests wait for the database meanwhile.
    maxWorkers: os.availableParallelism(),
    projects: [
      { extends: true, test: { name: 'unit', include: ['packages/**/*.test.{ts,tsx}', 'apps/**/*.test.{ts,tsx}', 'prisma/**/*.test.ts'] } },
      { extends: true, test: { name: 'reference', include: ['tests/reference/**/*.test.ts'] } },
      { extends: true, test: { name: 'isolation', include: ['tests/{isolation,faults}/**/*.test.ts'] } },
      // These start servers, clusters and copies of the tree: one at a time, and with patience.
      {
        extends: true,
        test: {
          name: 'tooling',
          include: ['tests/tooling/**/*.test.ts'],
          fileParallelism: false,
          testTimeout: 120_000,
          hookTimeout: 120_000,
        },
      },
    ],
  },
})
