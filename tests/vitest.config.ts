import os from 'node:os'
import path from 'node:path'
import { configDefaults, defineConfig } from 'vitest/config'
import LongestFirst from './support/longest-first.ts'

/** Tests of what has no clock, chance or database; the arrows between the packages see to it. */
const PURE = [
  'packages/{units,records,softener,forecast,dispatch,service-rules,documents,messages,contract,ui}/**/*.test.{ts,tsx}',
  'tests/reference/**/*.test.ts',
]

/** Use cases against a database: each file has its own, and closes what it opened; but what sets the environment stays alone. */
const OPERATIONS = ['packages/operations/**/*.test.ts']
const ALONE = ['packages/operations/jobs/travel.test.ts']

export default defineConfig({
  // As the web app's own compiler reads it: its routes are tried in process.
  resolve: { alias: { '@': path.resolve(import.meta.dirname, '../apps/web') } },
  test: {
    root: path.resolve(import.meta.dirname, '..'),
    globalSetup: ['tests/support/test-cluster.mjs'],
    // With patience for what runs beside them: a timeout is for what hangs. How fast something is, is measured where it is promised.
    testTimeout: 180_000,
    hookTimeout: 180_000,
    // What a library calls deprecated is an error in its next version: here it is one already.
    execArgv: ['--throw-deprecation'],
    // One more than there are cores: many of the tests wait for the database, or for a process aside, meanwhile.
    maxWorkers: os.availableParallelism() + 1,
    sequence: { sequencer: LongestFirst },
    projects: [
      // Pure: nothing in them outlives a call, so files may share a process, which saves the third of a second that each takes to start.
      { extends: true, test: { name: 'pure', isolate: false, include: PURE } },
      // They share a process too: the database's and the queue's libraries take over a second to load.
      {
        extends: true,
        test: {
          ...{ name: 'operations', isolate: false, setupFiles: ['tests/support/next-file.ts'] },
          include: OPERATIONS,
          exclude: [...configDefaults.exclude, ...ALONE],
        },
      },
      {
        extends: true,
        test: {
          name: 'unit',
          include: ['packages/**/*.test.{ts,tsx}', 'apps/**/*.test.{ts,tsx}', 'prisma/**/*.test.ts'],
          exclude: [...configDefaults.exclude, ...PURE, ...OPERATIONS],
        },
      },
      { extends: true, test: { name: 'isolation', include: ['tests/{isolation,faults}/**/*.test.ts', ...ALONE] } },
      { extends: true, test: { name: 'tooling', include: ['tests/tooling/**/*.test.ts'] } },
    ],
  },
})
