import fs from 'node:fs'
import os from 'node:os'
import path from 'node:path'
import { afterAll, expect, test } from 'vitest'

// Plain JavaScript, without types of its own.
const { sourcesMark } = await import(new URL('../../scripts/support/sources.mjs', import.meta.url).href)
const folder = fs.mkdtempSync(path.join(os.tmpdir(), 'almanac-sources-'))
afterAll(() => fs.rmSync(folder, { recursive: true }))

function write(name: string, text: string) {
  const file = path.join(folder, name)
  fs.mkdirSync(path.dirname(file), { recursive: true })
  fs.writeFileSync(file, text)
}

test('sources are told apart by what changes in any of them, and not by what tools make of them', () => {
  for (const name of ['apps/web/page.tsx', 'packages/units/day.ts', 'prisma/schema/site.prisma', 'scripts/start.mjs', 'package-lock.json'])
    write(name, 'one')
  const mark = sourcesMark(folder)
  expect(sourcesMark(folder)).toBe(mark)
  for (const made of ['apps/web/.next/BUILD_ID', 'packages/units/node_modules/x.js', 'packages/units/generated/client.ts'])
    write(made, 'made')
  expect(sourcesMark(folder)).toBe(mark)

  const seen = new Set([mark])
  const changes = [
    () => write('packages/units/day.ts', 'longer'),
    () => write('package-lock.json', 'another'),
    () => write('prisma/migrations/1/migration.sql', 'new'),
    () => fs.rmSync(path.join(folder, 'apps/web/page.tsx')),
    // As long as before, at another time.
    () => fs.utimesSync(path.join(folder, 'scripts/start.mjs'), new Date(0), new Date(0)),
  ]
  for (const change of changes) {
    change()
    seen.add(sourcesMark(folder))
  }
  expect(seen.size).toBe(changes.length + 1)
})
