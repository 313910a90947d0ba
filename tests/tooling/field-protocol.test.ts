import fs from 'node:fs'
import path from 'node:path'
import { expect, test } from 'vitest'

const root = path.resolve(import.meta.dirname, '../..')
const read = (file: string) => fs.readFileSync(path.join(root, file), 'utf8')

test('each line of the table of promises to a tablet has one test of its name', () => {
  const [, table = ''] = read('docs/field-protocol.md').split('## The table')
  const lines = [...(table.split('\n## ')[0] ?? '').matchAll(/^\| (.+?) \|/gm)].map(([, line]) => line ?? '')
  const promised = lines.filter((line) => line !== 'What happens' && !line.startsWith('-'))
  expect(promised.length).toBeGreaterThanOrEqual(15)
  const tested = [...read('packages/operations/jobs/take-field-command.test.ts').matchAll(/^ {2}test\('(.+?)', /gm)].map(([, name]) => name)
  expect(promised.map((line) => [line, tested.filter((name) => name === line).length])).toEqual(promised.map((line) => [line, 1]))
})
