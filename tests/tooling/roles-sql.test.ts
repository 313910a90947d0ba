import { spawnSync } from 'node:child_process'
import fs from 'node:fs'
import os from 'node:os'
import path from 'node:path'
import { afterAll, expect, test } from 'vitest'

const root = path.resolve(import.meta.dirname, '../..')
const clone = fs.mkdtempSync(path.join(os.tmpdir(), 'almanac-clone-'))
afterAll(() => fs.rmSync(clone, { recursive: true, force: true }))

/** A clone before its packages are there, and an npm that brings them at once: it talks on stdout, as the real one does. */
function freshClone(): NodeJS.ProcessEnv {
  fs.cpSync(path.join(root, 'scripts'), path.join(clone, 'scripts'), { recursive: true })
  fs.writeFileSync(path.join(clone, 'package-lock.json'), '{}')
  const npm = path.join(clone, 'npm')
  fs.writeFileSync(npm, '#!/bin/sh\nmkdir -p node_modules\necho {} > node_modules/.package-lock.json\necho added 900 packages\n', {
    mode: 0o755,
  })
  return { ...process.env, PATH: `${clone}${path.delimiter}${process.env.PATH}`, npm_execpath: undefined }
}

test('in a fresh clone what goes on to psql is SQL and nothing else, while the progress is shown', () => {
  const run = spawnSync(process.execPath, ['scripts/run.mjs', 'roles-sql'], { cwd: clone, env: freshClone(), encoding: 'utf8' })
  expect(run.stderr).toMatch(/installing packages[\s\S]*added 900 packages[\s\S]*packages are installed/)
  expect(run.status).toBe(0)
  const outside = run.stdout.replace(/DO \$\$[\s\S]*?\n\$\$;/, '').split('\n')
  expect(outside.filter((line) => !/^(--.*|ALTER ROLE .*;|GRANT .*;|CREATE DATABASE .*;|)$/.test(line))).toEqual([])
  expect(run.stdout).toContain('CREATE ROLE almanac_app_login')
})
