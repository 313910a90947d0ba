import { jobStates } from '@almanac/records/job-state'
import type { ReactNode } from 'react'
import { expect, it, vi } from 'vitest'
import { answers } from '../../../../tests/support/answered-queries.ts'
import { englishLeft } from '../../../../tests/support/english-left.ts'
import { JOBS, OWN } from '../../../../tests/support/spanish-records.ts'
import { spanishScreen } from '../../../../tests/support/spanish-screen.tsx'
import { Jobs } from './jobs.tsx'

vi.mock('@tanstack/react-query', async (original) => {
  const { answered, answeredInPages } = await import('../../../../tests/support/answered-queries.ts')
  return { ...(await original<object>()), useQuery: answered, useInfiniteQuery: answeredInPages }
})
const navigation = vi.hoisted(() => ({ search: '' }))
vi.mock('next/navigation', () => ({
  useRouter: () => ({ replace: () => {}, push: () => {} }),
  usePathname: () => '/',
  useSearchParams: () => new URLSearchParams(navigation.search),
}))

/** What of a page is English, apart from what people wrote themselves. */
const left = (shown: string) => englishLeft(shown, OWN)
const screen = (part: ReactNode) => spanishScreen('office', part)

it('a Spanish technician reads jobs in each state', () => {
  answers.set('jobs.overview', { counts: Object.fromEntries(jobStates.map((state) => [state, 3])), towns: ['Fleetham'] })
  answers.set('sites.list', { rows: [], nextCursor: null })
  for (const state of jobStates) {
    navigation.search = `state=${state}&kind=rebed`
    answers.set('jobs.list', { rows: JOBS, nextCursor: null })
    expect(left(screen(<Jobs />))).toEqual([])
    answers.set('jobs.list', { rows: [], nextCursor: null })
    expect(left(screen(<Jobs />))).toEqual([])
    answers.set('sites.list', { rows: [{}], nextCursor: null })
  }
})
