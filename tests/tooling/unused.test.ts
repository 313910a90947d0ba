import { spawnSync } from 'node:child_process'
import fs from 'node:fs'
import os from 'node:os'
import path from 'node:path'
import { afterEach, beforeEach, expect, test } from 'vitest'

const root = path.resolve(import.meta.dirname, '../..')
let tree: string

const put = (file: string, text: string) => {
  fs.mkdirSync(path.dirname(path.join(tree, file)), { recursive: true })
  fs.writeFileSync(path.join(tree, file), text)
}
/** What the rule of `npm run lint` says of the tree. */
function look() {
  const run = spawnSync(
    path.join(root, 'node_modules/.bin/knip'),
    ['--config', 'scripts/lint/knip.jsonc', '--no-progress', '--reporter', 'json'],
    {
      cwd: tree,
      encoding: 'utf8',
    },
  )
  return { status: run.status, words: run.stdout + run.stderr }
}

/** A small house as this one is built: one package, one worker that uses it, and a library. */
beforeEach(() => {
  tree = fs.mkdtempSync(path.join(os.tmpdir(), 'unused-'))
  put('scripts/lint/knip.jsonc', fs.readFileSync(path.join(root, 'scripts/lint/knip.jsonc'), 'utf8'))
  put('package.json', JSON.stringify({ name: 'house', private: true, type: 'module', workspaces: ['apps/*', 'packages/*'] }))
  const own = { private: true, type: 'module' }
  put('packages/units/package.json', JSON.stringify({ ...own, name: '@almanac/units', exports: { './*': './*.ts' } }))
  put('packages/units/volume.ts', 'export const litres = (gallons: number) => gallons * 3.785411784\n')
  put('apps/worker/package.json', JSON.stringify({ ...own, name: '@almanac/worker', dependencies: { '@almanac/units': '*' } }))
  put('apps/worker/main.ts', `import { litres } from '@almanac/units/volume'\nconsole.log(litres(1))\n`)
  fs.mkdirSync(path.join(tree, 'node_modules/@almanac'), { recursive: true })
  fs.symlinkSync(path.join(tree, 'packages/units'), path.join(tree, 'node_modules/@almanac/units'))
})
afterEach(() => fs.rmSync(tree, { recursive: true }))

test('what is used passes', () => {
  expect(look()).toMatchObject({ status: 0 })
})

test.each([
  ['an export', 'packages/units/volume.ts', 'export const litres = (gallons: number) => gallons * 3.785411784\nexport const planted = 1\n'],
  ['a whole file of a package', 'packages/units/planted.ts', 'export const planted = 1\n'],
  ['a file of an app', 'apps/worker/planted.ts', 'console.log(1)\n'],
  [
    'a dependency',
    'apps/worker/package.json',
    JSON.stringify({ name: '@almanac/worker', type: 'module', dependencies: { '@almanac/units': '*', planted: '1.0.0' } }),
  ],
])('%s that nothing uses is found', (_what, file, text) => {
  put(file, text)
  const { status, words } = look()
  expect(status).toBe(1)
  expect(words).toContain('planted')
})
