import type { ReactNode } from 'react'
import { expect, it, vi } from 'vitest'
import { answers } from '../../../../tests/support/answered-queries.ts'
import { englishLeft } from '../../../../tests/support/english-left.ts'
import { jobLines, LINE, OWN, TANK } from '../../../../tests/support/spanish-records.ts'
import { spanishScreen } from '../../../../tests/support/spanish-screen.tsx'
import { Sites } from './sites.tsx'

vi.mock('@tanstack/react-query', async (original) => {
  const { answered, answeredInPages } = await import('../../../../tests/support/answered-queries.ts')
  return { ...(await original<object>()), useQuery: answered, useInfiniteQuery: answeredInPages }
})
vi.mock('next/navigation', () => ({
  useRouter: () => ({ replace: () => {}, push: () => {} }),
  usePathname: () => '/',
  useSearchParams: () => new URLSearchParams(),
}))

/** What of a page is English, apart from what people wrote themselves. */
const left = (shown: string) => englishLeft(shown, OWN)
const screen = (part: ReactNode) => spanishScreen('office', part)

it('a Spanish technician reads the list of sites, found or not', () => {
  const site = {
    ...{
      id: 's',
      label: 'Quarry Close 2',
      street: null,
      town: 'Fleetham',
      customerName: null,
      tanks: [TANK, { ...TANK, id: 'u', heightIn: 48 }],
    },
    ...{ beds: [LINE], nextJob: jobLines[0] },
  }
  const bare = {
    ...site,
    id: 'r',
    customerName: 'Marta Quill',
    beds: [{ ...LINE, ...{ due10Day: null, beganEarliest: null, beganLatest: null } }],
    nextJob: null,
  }
  answers.set('sites.list', {
    rows: [site, bare, { ...bare, id: 'q', tanks: [], beds: [] }, { ...bare, id: 'p', beds: [] }],
    nextCursor: 'x',
  })
  const shown = screen(<Sites />)
  expect(left(shown)).toEqual([])
  expect(shown).toContain('2 tanques: 10 × 54 in y 10 × 48 in')
  answers.set('sites.list', { rows: [], nextCursor: null })
  expect(left(screen(<Sites />))).toEqual([])
})
