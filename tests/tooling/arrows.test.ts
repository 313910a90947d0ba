// Each "never" of the house plan is planted once under tests/planted/violating, with a clean counterpart under tests/planted/clean.
// What these tests expect comes from the plan: which import is forbidden, by name of the rule that forbids it.
import { spawnSync } from 'node:child_process'
import fs from 'node:fs'
import os from 'node:os'
import path from 'node:path'
import { beforeAll, describe, expect, test } from 'vitest'

const root = path.resolve(import.meta.dirname, '../..')
const planted = path.join(root, 'tests/planted')

const forbiddenImports = [
  ['packages/softener/imports-react.ts', 'pure-imports-only-units-and-records'],
  ['packages/softener/imports-zod.ts', 'pure-imports-only-units-and-records'],
  ['packages/service-rules/imports-node.ts', 'pure-imports-only-units-and-records'],
  ['packages/forecast/imports-prisma.ts', 'pure-imports-only-units-and-records'],
  ['packages/dispatch/imports-runtime.ts', 'pure-imports-only-units-and-records'],
  ['packages/softener/imports-forecast.ts', 'pure-packages-apart'],
  ['packages/records/imports-softener.ts', 'records-import-only-units'],
  ['packages/records/imports-zod.ts', 'records-import-only-units'],
  ['packages/units/imports-records.ts', 'units-import-nothing'],
  ['packages/contract/imports-softener.ts', 'contract-imports-only-records-and-zod'],
  ['packages/runtime/imports-database.ts', 'runtime-imports-no-package'],
  ['packages/database/imports-operations.ts', 'database-imports-only-runtime-records-and-units'],
  ['packages/database/imports-contract-value.ts', 'database-imports-contract-types-only'],
  ['packages/operations/shared/imports-domain.ts', 'operations-shared-imports-no-domain'],
  ['packages/files/imports-operations.ts', 'files-import-only-runtime'],
  ['packages/operations/jobs/opens-bucket.ts', 'only-files-imports-the-store'],
  ['packages/identity/imports-operations.ts', 'identity-imports-only-database-records-and-runtime'],
  ['packages/operations/jobs/imports-other-domain.ts', 'operations-domains-apart'],
  ['packages/operations/jobs/imports-other-domain-by-name.ts', 'operations-domains-apart'],
  ['packages/operations/jobs/opens-client.ts', 'only-database-imports-prisma'],
  ['packages/operations/jobs/opens-generated-client.ts', 'only-database-imports-prisma'],
  ['packages/operations/jobs/imports-driver.ts', 'only-database-and-runtime-import-the-driver'],
  ['packages/operations/jobs/imports-ui.ts', 'operations-import-no-screen'],
  ['packages/ui/imports-contract.ts', 'ui-imports-only-softener-units-and-records'],
  ['apps/web/features/coming-due/imports-other-feature.ts', 'features-apart'],
  ['apps/web/features/coming-due/imports-other-feature-by-alias.ts', 'features-apart'],
  ['apps/web/features/coming-due/imports-database.ts', 'screens-import-no-database'],
  ['apps/web/app/page.ts', 'screens-import-no-database'],
  ['apps/web/imports-worker.ts', 'web-imports-no-worker'],
  ['apps/worker/imports-web.ts', 'worker-imports-no-web'],
  ['packages/units/imports-app.ts', 'packages-import-no-app'],
  ['packages/softener/imports-test.ts', 'code-imports-no-test'],
  ['packages/softener/cycle-a.ts', 'no-import-cycle'],
  ['apps/worker/imports-nothing-there.ts', 'import-exists'],
] as const

const forbiddenLines = [
  ['packages/operations/jobs/writes-sql.ts', 'sql-in-database'],
  ['packages/softener/knows-clock.ts', 'pure-no-clock'],
  ['packages/softener/knows-today.ts', 'pure-no-clock'],
  ['packages/forecast/knows-chance.ts', 'pure-no-randomness'],
  ['packages/forecast/knows-environment.ts', 'lint/style/noRestrictedGlobals'],
  ['packages/units/index.ts', 'lint/performance/noBarrelFile'],
  ['packages/units/too-long.ts', 'lint/style/noExcessiveLinesPerFile'],
  ['apps/web/features/coming-due/server-action.ts', 'no-use-server'],
  ['apps/web/features/coming-due/inner-server-action.ts', 'no-use-server'],
  ['apps/web/features/coming-due/reads-numbers.ts', 'typed-numbers'],
  ['apps/web/client/parses-numbers.ts', 'typed-numbers'],
  ['packages/messages/writes-clock.ts', 'one-writer'],
  ['packages/messages/asks-intl.ts', 'one-writer'],
  ['packages/messages/bare-day.ts', 'one-writer'],
  ['apps/web/client/fixed-locale.ts', 'one-writer'],
  ['apps/web/client/own-percent.ts', 'one-writer'],
] as const

type Found = { rule: string; file: string }

/** What the arrows' linter reports for one planted tree, as its command would for the repository. */
function arrowsOf(tree: string): Found[] {
  const script = `
    import { readArrows } from ${JSON.stringify(path.join(root, 'scripts/lint-arrows.mjs'))}
    const { violations } = await readArrows(${JSON.stringify(path.join(planted, tree))}, ['apps', 'packages'])
    console.log(JSON.stringify(violations.map(({ rule, from }) => ({ rule, file: from }))))`
  const run = spawnSync(process.execPath, ['--input-type=module', '-e', script], { encoding: 'utf8', cwd: root })
  expect(run.stderr).toBe('')
  return JSON.parse(run.stdout)
}

/** Biome's errors for a copy of one planted tree under the repository's own configuration: the originals are exempt from it. */
function biomeOf(tree: string, long: number): Found[] {
  const copy = fs.mkdtempSync(path.join(os.tmpdir(), 'planted-'))
  try {
    fs.cpSync(path.join(planted, tree), copy, { recursive: true })
    fs.cpSync(path.join(root, 'biome.json'), path.join(copy, 'biome.json'))
    fs.cpSync(path.join(root, 'scripts/lint'), path.join(copy, 'scripts/lint'), { recursive: true })
    fs.writeFileSync(
      path.join(copy, 'packages/units/too-long.ts'),
      Array.from({ length: long }, (_, i) => `export const n${i} = ${i}\n`).join(''),
    )
    const biome = path.join(root, 'node_modules/@biomejs/biome/bin/biome')
    const run = spawnSync(process.execPath, [biome, 'lint', '--reporter=json', '--max-diagnostics=200', '.'], {
      cwd: copy,
      encoding: 'utf8',
    })
    const { diagnostics } = JSON.parse(run.stdout) as {
      diagnostics: { category: string; severity: string; message: string; location: { path: string } }[]
    }
    return diagnostics
      .filter(({ severity }) => severity === 'error')
      .map(({ category, message, location }) => ({
        rule: category === 'plugin' ? (message.split(':')[0] ?? '') : category,
        file: location.path,
      }))
  } finally {
    fs.rmSync(copy, { recursive: true })
  }
}

describe('imports that the plan forbids', () => {
  let found: Found[]
  beforeAll(() => {
    found = arrowsOf('violating')
  })
  test.each(forbiddenImports)('%s is reported as %s', (file, rule) => {
    expect(found).toContainEqual({ rule, file })
  })
  test('nothing else is reported by the way', () => {
    const planned = new Set<string>(forbiddenImports.map(([file]) => file))
    expect(found.filter(({ file }) => !planned.has(file))).toEqual([])
  })
  test('the clean counterparts pass', () => {
    expect(arrowsOf('clean')).toEqual([])
  })
})

describe('lines that the plan forbids', () => {
  let found: Found[]
  beforeAll(() => {
    found = biomeOf('violating', 501)
  })
  test.each(forbiddenLines)('%s is reported as %s', (file, rule) => {
    expect(found).toContainEqual({ rule, file })
  })
  test('the clean counterparts pass, also with a file of 500 lines', () => {
    expect(biomeOf('clean', 500)).toEqual([])
  })
})
