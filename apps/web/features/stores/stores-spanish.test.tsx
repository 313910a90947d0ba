import { movementReasons, stockKinds } from '@almanac/records/stock'
import type { ReactNode } from 'react'
import { expect, it, vi } from 'vitest'
import { answers } from '../../../../tests/support/answered-queries.ts'
import { englishLeft } from '../../../../tests/support/english-left.ts'
import { OWN } from '../../../../tests/support/spanish-records.ts'
import { spanishScreen } from '../../../../tests/support/spanish-screen.tsx'
import { Stores } from './stores.tsx'

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

it('a Spanish technician reads the stores', () => {
  const order = { stockItemId: 'i', version: 1, name: 'Fleetham', unit: 'bag', onHand: 1, leadDays: 1, reserved: 2, free: -1, order: 4 }
  answers.set('stores.orders', {
    untilDay: '2027-03-01',
    lines: [
      { ...order, shortForBookedOn: '2026-12-05', outOn: null, orderBy: '2026-11-01' },
      {
        ...order,
        stockItemId: 'k',
        unit: 'lb',
        leadDays: 9,
        reserved: 0,
        shortForBookedOn: null,
        outOn: '2027-01-05',
        orderBy: '2026-12-20',
      },
    ],
  })
  answers.set('stores.items', {
    rows: stockKinds.map((kind, i) => ({
      ...{ id: kind, version: 1, name: 'Fleetham', kind, unit: ['bag', 'piece', 'set', 'lb'][i % 4], onHand: i % 3, priceMinor: null },
      openDiscrepancies: i === 1 ? 1 : 0,
    })),
    nextCursor: null,
  })
  answers.set('stores.movements', {
    rows: movementReasons.map((reason, i) => ({
      ...{
        id: reason,
        at: '2026-05-01T15:00:00Z',
        itemName: 'Fleetham',
        unit: 'piece',
        quantity: i - 1,
        reason,
        visitId: i ? 'v' : null,
      },
      siteLabel: i === 2 ? null : 'Quarry Close 2',
    })),
    nextCursor: null,
  })
  const shown = screen(<Stores />)
  expect(left(shown)).toEqual([])
  expect(shown).toContain('1 bolsa')
  expect(shown).not.toMatch(/\b(bag|piece|set|resin|seal|received|used)s?\b/)
  answers.set('stores.orders', { untilDay: '2027-03-01', lines: [] })
  for (const list of ['items', 'movements']) answers.set(`stores.${list}`, { rows: [], nextCursor: null })
  expect(left(screen(<Stores />))).toEqual([])
})
