import fs from 'node:fs'
import path from 'node:path'
import { expect, test } from 'vitest'

const root = path.resolve(import.meta.dirname, '../..')
const read = (file: string) => fs.readFileSync(path.join(root, file), 'utf8')

test('each item of the trade names a test that is there', () => {
  const rows = [...read('tests/reference/trade-items.md').matchAll(/^\| (.+?) \| (\S+\.tsx?) \| (.+) \|$/gm)]
  expect(rows.length).toBeGreaterThan(35)
  for (const [, item, file = '', title = ''] of rows) expect(read(file).includes(title), `${item}: ${file}: ${title}`).toBe(true)
})
