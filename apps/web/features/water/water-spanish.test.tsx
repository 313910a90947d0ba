import type { ReactNode } from 'react'
import { expect, it, vi } from 'vitest'
import { answers } from '../../../../tests/support/answered-queries.ts'
import { englishLeft } from '../../../../tests/support/english-left.ts'
import { OWN, PERIODS } from '../../../../tests/support/spanish-records.ts'
import { spanishScreen } from '../../../../tests/support/spanish-screen.tsx'
import { Supplies } from './supplies.tsx'
import { Supply } from './supply.tsx'

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

it('a Spanish technician reads the waters and one supply', () => {
  answers.set('water.supplies', {
    rows: PERIODS.map((present, i) => ({
      id: String(i),
      name: 'Fleetham',
      kind: i % 2 ? 'town' : 'private-well',
      sites: 1200,
      present: i ? present : null,
    })),
    nextCursor: null,
  })
  expect(left(screen(<Supplies />))).toEqual([])
  answers.set('water.supplies', { rows: [], nextCursor: null })
  expect(left(screen(<Supplies />))).toEqual([])
  const move = { at: '2026-05-01T15:00:00Z', cause: 'supply', earlier: 1 }
  for (const kind of ['town', 'private-well'])
    for (const some of [true, false]) {
      answers.set('water.supply', {
        ...{
          id: 'w',
          name: 'Fleetham',
          kind,
          sites: 12,
          present: null,
          version: 1,
          notes: null,
          bedsWatched: 30,
          periods: some ? PERIODS : [],
        },
        moves: some
          ? [
              { ...move, runId: 'a', beds: 1, meanDays: -500 },
              { ...move, runId: 'b', beds: 1200, meanDays: 30 },
            ]
          : [],
      })
      expect(left(screen(<Supply waterSupplyId="w" />))).toEqual([])
    }
})
