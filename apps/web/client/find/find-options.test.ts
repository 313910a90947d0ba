import { permissionsOf } from '@almanac/identity/permissions'
import { type Role, roles } from '@almanac/records/role'
import { page } from '@almanac/words/en/page'
import { wordsIn } from '@almanac/words/words-in'
import { expect, test } from 'vitest'
import { navigationFor, pagesFor } from '../pages.ts'
import { pagesMet } from './find-options.ts'

const words = wordsIn('en-US', 'page')
const me = (role: Role) => ({ role, permissions: permissionsOf(role) })
const met = (query: string, role: Role = 'owner') => pagesMet(pagesFor(me(role), words), query).map((page) => page.label)

test.each(roles)('%s: six entries at most, each page once, and none that is not allowed', (role) => {
  const { nav, more } = navigationFor(me(role), '/sites', words)
  expect(nav.length).toBeGreaterThan(3)
  expect(nav.length).toBeLessThanOrEqual(6)
  const hrefs = [...nav, ...more].map((item) => item.href)
  expect(new Set(hrefs).size).toBe(hrefs.length)
  expect([...nav, ...more].filter((item) => item.current).map((item) => item.href)).toEqual(['/sites'])
  if (role !== 'owner') expect(hrefs).not.toContain('/firm')
  if (role === 'technician') expect(hrefs[0]).toBe('/today')
})

test.each([
  ['stores', 'Stores'],
  ['sto', 'Stores'],
  ['stroes', 'Stores'],
  ['excel', 'Import'],
  ['which tank', 'Which tank?'],
  ['figures', 'Company'],
])('%j leads to %s first', (query, label) => expect(met(query)[0]).toBe(label))

test('neither a letter or two nor a word of another role leads to a page', () => {
  expect(met('st')).toEqual([])
  expect(met('import', 'technician')).toEqual([])
  expect(met('zzqq')).toEqual([])
})

test('each page has its name and its other words, and there are none of a page that is not there', () => {
  const everything = { role: 'technician', permissions: permissionsOf('owner') } as const
  const hrefs = [...pagesFor(everything, words), ...pagesFor({ ...everything, permissions: ['close:visit'] }, words)].map((one) => one.href)
  expect(Object.keys(page).sort()).toEqual([...new Set(hrefs)].flatMap((href) => [href, `${href}/also`]).sort())
})
