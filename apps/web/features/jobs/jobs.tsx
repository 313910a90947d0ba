'use client'
import type { JobRow } from '@almanac/contract/jobs'
import { jobKinds, jobKindWords } from '@almanac/records/job-kind'
import { type JobState, jobStates } from '@almanac/records/job-state'
import { thumbOf } from '@almanac/softener/rebed/thumb-of-record'
import { BedThumb } from '@almanac/ui/bed-thumb'
import { DataTable } from '@almanac/ui/data-table'
import { useDisplay } from '@almanac/ui/display'
import { FilterBar } from '@almanac/ui/filter-bar'
import { FilterSelect } from '@almanac/ui/filter-select'
import { LinkButton } from '@almanac/ui/link-button'
import { PageHead } from '@almanac/ui/page-head'
import { Pager } from '@almanac/ui/pager'
import { Problem } from '@almanac/ui/problem'
import { Skeleton } from '@almanac/ui/skeleton'
import { formatClock } from '@almanac/units/format-clock'
import { formatNearDay } from '@almanac/units/format-day'
import { showWhole } from '@almanac/units/format-number'
import { useInfiniteQuery, useQuery } from '@tanstack/react-query'
import Link from 'next/link'
import { usePathname, useRouter, useSearchParams } from 'next/navigation'
import { bedWords } from '@/client/bed-facts-words'
import { EmptyOrFirst } from '@/client/empty-or-first'
import { readFailure } from '@/client/failure'
import { dueWords, peopleWords, weekRisk } from '@/client/job-words'
import { usePermission, useSession } from '@/client/providers'
import { useRebedFirm } from '@/client/use-rebed-firm'
import { useToday } from '@/client/use-today'

const WORDS: Record<JobState, string> = {
  proposed: 'to book',
  booked: 'booked',
  'under-way': 'under way',
  held: 'held',
  closed: 'closed',
  'called-off': 'called off',
}

/** Jobs by state; those that still need a place come first. */
export function Jobs() {
  const firm = useRebedFirm()
  const display = useDisplay()
  const { api, me } = useSession()
  const today = useToday()
  const search = useSearchParams()
  const router = useRouter()
  const path = usePathname()
  const mayBook = usePermission('book:visit')
  const state = jobStates.find((one) => one === search.get('state')) ?? 'proposed'
  const kind = jobKinds.find((one) => one === search.get('kind'))
  const town = search.get('town') ?? undefined
  const overview = useQuery(api.jobs.overview.queryOptions())
  const list = useInfiniteQuery(
    api.jobs.list.infiniteOptions({
      input: (cursor: string | undefined) => ({ state, kind, town, limit: 50, cursor }),
      initialPageParam: undefined,
      getNextPageParam: (last) => last.nextCursor ?? undefined,
    }),
  )
  const rows = list.data?.pages.flatMap((one) => one.rows) ?? []
  const change = (part: Record<string, string | undefined>) => {
    const next = new URLSearchParams(search)
    for (const [key, value] of Object.entries(part)) {
      if (value) next.set(key, value)
      else next.delete(key)
    }
    router.replace(next.size ? `${path}?${next}` : path, { scroll: false })
  }
  const failure = list.error ?? overview.error
  return (
    <>
      <PageHead
        title="Jobs"
        lead="Work to do, most urgent first. Open a job to see its best places on the day sheets."
        actions={
          mayBook ? (
            <LinkButton href="/day-sheets" link={Link} kind="ink">
              To the day sheets
            </LinkButton>
          ) : undefined
        }
      />
      <FilterBar label="Filter the jobs" onClear={kind || town ? () => change({ kind: undefined, town: undefined }) : undefined}>
        <FilterSelect
          label="State"
          value={state}
          onChange={(event) => change({ state: event.target.value === 'proposed' ? undefined : event.target.value })}
          choices={jobStates.map((one) => {
            const count = overview.data?.counts[one]
            return { value: one, label: count === undefined ? WORDS[one] : `${WORDS[one]} (${showWhole(count, display)})` }
          })}
        />
        <FilterSelect
          label="Kind"
          value={kind ?? ''}
          onChange={(event) => change({ kind: event.target.value })}
          choices={[{ value: '', label: 'all' }, ...jobKinds.map((one) => ({ value: one, label: jobKindWords[one] }))]}
        />
        <FilterSelect
          label="Town"
          value={town ?? ''}
          onChange={(event) => change({ town: event.target.value })}
          choices={[{ value: '', label: 'all' }, ...(overview.data?.towns ?? []).map((one) => ({ value: one, label: one }))]}
        />
      </FilterBar>
      {failure ? <Problem happened={readFailure(failure).message} onRetry={() => void list.refetch()} /> : null}
      {list.isPending ? <Skeleton lines={8} label="Loading the jobs" /> : null}
      {list.isSuccess ? (
        <DataTable<JobRow>
          caption={`Jobs, ${WORDS[state]}`}
          rows={rows}
          rowKey={(row) => row.id}
          rowHref={(row) => `/jobs/${row.id}`}
          link={Link}
          busy={list.isFetching && !list.isFetchingNextPage}
          columns={[
            {
              key: 'thumb',
              head: <span className="sr-only">Drawing</span>,
              width: '44px',
              phone: 'hide',
              cell: (row) => (row.bed ? <BedThumb thumb={thumbOf(row.bed, firm)} /> : null),
            },
            {
              key: 'what',
              head: 'Job',
              phone: 'title',
              cell: (row) => (
                <>
                  <span className="font-semibold">
                    {jobKindWords[row.kind]} · {row.siteLabel}
                  </span>
                  {row.town ? <span className="block text-small text-soft">{row.town}</span> : null}
                </>
              ),
            },
            { key: 'bed', head: 'Bed', cell: (row) => (row.bed ? bedWords(row.bed, me.company) : null) },
            { key: 'crew', head: 'Needs', cell: (row) => peopleWords(row.crewSize) },
            {
              key: 'due',
              head: 'When',
              cell: (row) =>
                row.nextVisit
                  ? `${formatNearDay(row.nextVisit.day, display)} ${formatClock(row.nextVisit.startsAt, display)}, ${row.nextVisit.crewName}`
                  : (dueWords(row.dueEarliest, row.dueLatest, today, display) ?? 'no date'),
            },
            {
              key: 'risk',
              head: 'Risk of a week’s wait',
              phoneHead: 'Risk of waiting a week',
              cell: (row) => {
                const risk = weekRisk(row.kind, row.chance3Months, display)
                return risk && <span className="text-soft">{risk}</span>
              },
            },
          ]}
          empty={
            <EmptyOrFirst
              first="No jobs yet"
              title={`No jobs ${WORDS[state]}`}
              action={
                state === 'proposed' && mayBook ? (
                  <LinkButton href="/coming-due" link={Link}>
                    See what comes due
                  </LinkButton>
                ) : null
              }
            >
              {state === 'proposed' ? 'Add jobs from Coming due, or from a site.' : 'Choose another state above.'}
            </EmptyOrFirst>
          }
        />
      ) : null}
      {list.hasNextPage ? <Pager onNext={() => void list.fetchNextPage()} busy={list.isFetchingNextPage} /> : null}
    </>
  )
}
