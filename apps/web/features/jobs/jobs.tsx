'use client'
import type { JobRow } from '@almanac/contract/jobs'
import { jobKinds } from '@almanac/records/job-kind'
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
import { useWords } from '@almanac/words/use-words'
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

/** Jobs by state; those that still need a place come first. */
export function Jobs() {
  const firm = useRebedFirm()
  const [words, kinds, states] = [useWords('job'), useWords('jobKind'), useWords('jobState')]
  const stateOf = (one: JobState) => (one === 'proposed' ? words('toBook') : states(one))
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
        title={words('title')}
        lead={words('lead')}
        actions={
          mayBook ? (
            <LinkButton href="/day-sheets" link={Link} kind="ink">
              {words('toDaySheets')}
            </LinkButton>
          ) : undefined
        }
      />
      <FilterBar label={words('filter')} onClear={kind || town ? () => change({ kind: undefined, town: undefined }) : undefined}>
        <FilterSelect
          label={words('state')}
          value={state}
          onChange={(event) => change({ state: event.target.value === 'proposed' ? undefined : event.target.value })}
          choices={jobStates.map((one) => {
            const count = overview.data?.counts[one]
            return {
              value: one,
              label: count === undefined ? stateOf(one) : words('counted', { state: stateOf(one), count: showWhole(count, display) }),
            }
          })}
        />
        <FilterSelect
          label={words('kind')}
          value={kind ?? ''}
          onChange={(event) => change({ kind: event.target.value })}
          choices={[{ value: '', label: words('all') }, ...jobKinds.map((one) => ({ value: one, label: kinds(one) }))]}
        />
        <FilterSelect
          label={words('town')}
          value={town ?? ''}
          onChange={(event) => change({ town: event.target.value })}
          choices={[{ value: '', label: words('all') }, ...(overview.data?.towns ?? []).map((one) => ({ value: one, label: one }))]}
        />
      </FilterBar>
      {failure ? <Problem happened={readFailure(failure).message} onRetry={() => void list.refetch()} /> : null}
      {list.isPending ? <Skeleton lines={8} label={words('loadingList')} /> : null}
      {list.isSuccess ? (
        <DataTable<JobRow>
          caption={words('caption', { state: stateOf(state) })}
          rows={rows}
          rowKey={(row) => row.id}
          rowHref={(row) => `/jobs/${row.id}`}
          link={Link}
          busy={list.isFetching && !list.isFetchingNextPage}
          columns={[
            {
              key: 'thumb',
              head: <span className="sr-only">{words('drawing')}</span>,
              width: '44px',
              phone: 'hide',
              cell: (row) => (row.bed ? <BedThumb thumb={thumbOf(row.bed, firm)} /> : null),
            },
            {
              key: 'what',
              head: words('job'),
              phone: 'title',
              cell: (row) => (
                <>
                  <span className="font-semibold">
                    {kinds(row.kind)} · {row.siteLabel}
                  </span>
                  {row.town ? <span className="block text-small text-soft">{row.town}</span> : null}
                </>
              ),
            },
            { key: 'bed', head: words('bed'), cell: (row) => (row.bed ? bedWords(row.bed, me.company) : null) },
            { key: 'crew', head: words('needs'), cell: (row) => peopleWords(row.crewSize, words) },
            {
              key: 'due',
              head: words('when'),
              cell: (row) =>
                row.nextVisit
                  ? `${formatNearDay(row.nextVisit.day, display)} ${formatClock(row.nextVisit.startsAt, display)}, ${row.nextVisit.crewName}`
                  : (dueWords(row.dueEarliest, row.dueLatest, today, { words, display }) ?? words('noDate')),
            },
            {
              key: 'risk',
              head: words('riskOfWeek'),
              phoneHead: words('riskOfWeekShort'),
              cell: (row) => {
                const risk = weekRisk(row.kind, row.chance3Months, display)
                return risk && <span className="text-soft">{risk}</span>
              },
            },
          ]}
          empty={
            <EmptyOrFirst
              first={words('noJobs')}
              title={words('noneInState', { state: stateOf(state) })}
              action={
                state === 'proposed' && mayBook ? (
                  <LinkButton href="/coming-due" link={Link}>
                    {words('seeComingDue')}
                  </LinkButton>
                ) : null
              }
            >
              {words(state === 'proposed' ? 'howAdded' : 'otherState')}
            </EmptyOrFirst>
          }
        />
      ) : null}
      {list.hasNextPage ? <Pager onNext={() => void list.fetchNextPage()} busy={list.isFetchingNextPage} /> : null}
    </>
  )
}
