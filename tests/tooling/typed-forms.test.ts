import { execFileSync } from 'node:child_process'
import fs from 'node:fs'
import path from 'node:path'
import { expect, test } from 'vitest'
import { FIGURE_TEXTS, TYPED_FORMS } from '../support/typed-forms.ts'

const root = path.resolve(import.meta.dirname, '../..')
const read = (file: string) => fs.readFileSync(path.join(root, file), 'utf8')
const specText = (spec: string) => read(`tests/browser/${spec}.spec.ts`)

/** How many fields for a number each file of the web app writes out; the two homes of the field itself are none. */
function fieldsWrittenOut(): Record<string, number> {
  const listed = execFileSync('git', ['ls-files', '-co', '--exclude-standard', 'apps/web/*.tsx'], { cwd: root, encoding: 'utf8' }).split(
    '\n',
  )
  const found: Record<string, number> = {}
  for (const file of listed) {
    if (!file || !fs.existsSync(path.join(root, file)) || /\.test\.tsx$|^apps\/web\/client\/amount-field\.tsx$/.test(file)) continue
    const count = read(file).match(/<(AmountField|NumberInput|ValueField)\b/g)?.length ?? 0
    if (count > 0) found[file.replace('apps/web/', '')] = count
  }
  return found
}

test('every form with a number is driven through the browser with the typed texts', () => {
  expect(Object.fromEntries(Object.entries(TYPED_FORMS).map(([file, { fields }]) => [file, fields]))).toEqual(fieldsWrittenOut())
})

test.each(Object.entries(TYPED_FORMS))('%s: its journey types into the fields it is said to', (_file, { spec, labels }) => {
  const text = specText(spec)
  expect(text).toMatch(/\bdrive\(|saidOf\(/)
  for (const label of labels) expect(text).toContain(label)
})

test('every number among a company’s figures is typed into', () => {
  const forms = read('apps/web/features/firm/figure-forms.ts')
  const labels = [...forms.matchAll(/label: '([^']+)'|numberForm\('([^']+)'/g)].flatMap(([, one, other]) => one ?? other ?? [])
  const texts: readonly string[] = FIGURE_TEXTS
  const asked = labels.filter((label) => !texts.includes(label))
  expect(asked.length).toBeGreaterThan(12)
  const driven = specText('typed-figures')
  expect(asked.filter((label) => !driven.includes(`'${label}'`))).toEqual([])
})
