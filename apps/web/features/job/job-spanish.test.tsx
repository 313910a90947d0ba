import { callComplaints } from '@almanac/records/call'
import { materialStates, materialWays } from '@almanac/records/stock'
import { visitOutcomes } from '@almanac/records/visit-outcome'
import type { ReactNode } from 'react'
import { expect, it, vi } from 'vitest'
import { answers } from '../../../../tests/support/answered-queries.ts'
import { englishLeft } from '../../../../tests/support/english-left.ts'
import { JOBS, OWN, PROOFS, WHOM } from '../../../../tests/support/spanish-records.ts'
import { spanishScreen } from '../../../../tests/support/spanish-screen.tsx'
import { Job } from './job.tsx'
import { PackingList } from './packing-list.tsx'

vi.mock('@tanstack/react-query', async (original) => {
  const { answered } = await import('../../../../tests/support/answered-queries.ts')
  return { ...(await original<object>()), useQuery: answered }
})
vi.mock('next/navigation', () => ({
  useRouter: () => ({ replace: () => {}, push: () => {} }),
  usePathname: () => '/',
  useSearchParams: () => new URLSearchParams(),
}))

/** What of a page is English, apart from what people wrote themselves. */
const left = (shown: string) => englishLeft(shown, OWN)
const screen = (part: ReactNode) => spanishScreen('office', part)

/** Ways in which a job can have been asked for. */
const ASKED = [
  { by: 'link', days: 'Ring twice' },
  ...callComplaints.map((sees, i) => ({
    ...{ by: 'call', quote: i % 2 === 0, rebedDay: i % 3 ? null : '2026-03-12', sees },
    hard: i % 2 ? { earliest: '2026-03-01', latest: '2026-03-31' } : null,
  })),
]

it('a Spanish technician reads a job with all that can be of it', () => {
  answers.set('pictures.ofJob', PROOFS)
  const line = {
    stockItemId: 'i',
    name: 'Fleetham',
    unit: 'bag',
    quantity: 2,
    returned: 1,
    free: 1,
    priceMinor: 900,
    handedAt: null,
    way: null,
  }
  const lines = [
    ...materialStates.map((state) => ({ ...line, id: state, state })),
    ...materialWays.map((way) => ({ ...line, id: way, state: 'handed-over', way, handedAt: '2026-12-01T15:00:00Z', priceMinor: null })),
    { ...line, id: 'short', state: 'reserved', free: -3 },
  ]
  answers.set('materials.ofJob', { lines })
  const visits = visitOutcomes.map((outcome, i) => ({
    ...{
      id: outcome,
      version: 1,
      state: 'closed',
      outcome,
      startsAt: '2026-12-01T15:00:00Z',
      endsAt: '2026-12-01T17:00:00Z',
      crewDayId: 'd',
    },
    ...{ day: '2026-12-01', crewName: 'A', people: [], notes: null },
    promised: i
      ? {
          from: '2026-12-01T16:00:00Z',
          until: '2026-12-01T18:00:00Z',
          by: i % 2 ? 'phone' : 'link',
          person: i % 3 ? 'Marta Quill' : null,
        }
      : null,
  }))
  for (const [i, job] of [...JOBS, ...JOBS].entries()) {
    answers.set('jobs.get', {
      ...{
        ...job,
        kind: i % 2 ? 'rebed' : job.kind,
        street: null,
        whom: WHOM,
        accessNotes: 'Ring twice',
        softenerId: null,
        softenerLabel: null,
        notes: i % 2 ? 'Ring twice' : null,
        askedFor: ASKED[i] ?? null,
      },
      ...{
        stateReason: 'Ring twice',
        usually: { middle: 160, longer: 190, visits: i, leftOut: i % 3 },
        createdAt: '',
        closedDay: '2026-12-02',
      },
      follows: { jobId: 'f', kind: 'inspection', leastDays: i, day: i % 2 ? null : '2026-11-01' },
      followedBy: [{ jobId: 'g', kind: 'cleaning', leastDays: i }],
      forecast: {
        asOfDay: '2026-11-29',
        due10Day: null,
        due50Day: null,
        due90Day: null,
        chance3Months: i ? 0.2 : null,
        chance12Months: 0.995,
        refusal: null,
      },
      visits: i ? visits : [],
    })
    expect(left(screen(<Job jobId="j" />)), job.kind).toEqual([])
    expect(left(screen(<PackingList jobId="j" />)), job.kind).toEqual([])
    answers.set('materials.ofJob', { lines: i % 2 ? lines : [] })
  }
})
