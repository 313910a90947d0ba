import os from 'node:os'
import path from 'node:path'
import { configDefaults, defineConfig } from 'vitest/config'
import LongestFirst from './support/longest-first.ts'

/** Tests of what has no clock, chance or database; the arrows between the packages see to it. */
const PURE = [
  'packages/{units,records,softener,forecast,dispatch,service-rules,documents,messages,contract,ui}/**/*.test.{ts,tsx}',
  'tests/reference/**/*.test.ts',
]

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
    sequence: { sequencer: LongestFirst },
    projects: [
      // Pure: nothing in them outlives a call, so files may share a process, which saves the third of a second that each takes to start.
      { extends: true, test: { name: 'pure', isolate: false, include: PURE } },
      {
        extends: true,
        test: {
          name: 'unit',
          include: ['packages/**/*.test.{ts,tsx}', 'apps/**/*.test.{ts,tsx}', 'prisma/**/*.test.ts'],
          exclude: [...configDefaults.exclude, ...PURE],
        },
      },
      { extends: true, test: { name: 'isolation', include: ['tests/{isolation,faults}/**/*.test.ts'] } },
      // These start servers, clusters and copies of the tree: with patience.
      { extends: true, test: { name: 'tooling', include: ['tests/tooling/**/*.test.ts'], testTimeout: 120_000, hookTimeout: 120_000 } },
    ],
  },
})
