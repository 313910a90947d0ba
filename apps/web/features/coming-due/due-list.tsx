'use client'
import type { Desk } from '@almanac/contract/desk'
import type { DueMonths } from '@almanac/contract/due'
import type { RebedPlan } from '@almanac/contract/forecasts'
import { Button } from '@almanac/ui/button'
import { DataTable } from '@almanac/ui/data-table'
import { useDisplay } from '@almanac/ui/display'
import { Empty } from '@almanac/ui/empty'
import { Pager } from '@almanac/ui/pager'
import { Problem } from '@almanac/ui/problem'
import { Skeleton } from '@almanac/ui/skeleton'
import { showWhole } from '@almanac/units/format-number'
import { useInfiniteQuery } from '@tanstack/react-query'
import Link from 'next/link'
import { useState } from 'react'
import { EmptyOrFirst } from '@/client/empty-or-first'
import { readFailure } from '@/client/failure'
import { usePermission, useSession } from '@/client/providers'
import { useRebedFirm } from '@/client/use-rebed-firm'
import { useToday } from '@/client/use-today'
import { callColumns, dueColumns } from './due-columns.tsx'
import { DueFilterBar } from './due-filter-bar.tsx'
import { DueTabs } from './due-tabs.tsx'
import { ProposeJobsPart } from './propose-jobs.tsx'
import { ProposePlannedPart } from './propose-planned.tsx'
import type { DueFilters, DueSort } from './use-due-filters.ts'

const SORT_OF: Record<string, DueSort> = { due: 'due', bed: 'age', already: 'failed', chance: 'chance' }
const SORT_KEYS: Record<Exclude<DueSort, 'telling'>, { key: string; direction: 'ascending' | 'descending' }> = {
  chance: { key: 'chance', direction: 'descending' },
  due: { key: 'due', direction: 'ascending' },
  age: { key: 'bed', direction: 'ascending' },
  failed: { key: 'already', direction: 'descending' },
}

type Props = { desk: Desk; picture: DueMonths; plan: RebedPlan | null; filters: DueFilters; change: (part: Partial<DueFilters>) => void }

/** The beds under the picture: filtered, sorted, ticked, and turned into jobs. */
export function DueList({ desk, picture, plan, filters, change }: Props) {
  const firm = useRebedFirm()
  const display = useDisplay()
  const { api, me } = useSession()
  const today = useToday()
  const mayPropose = usePermission('propose:job')
  const [selected, setSelected] = useState<ReadonlySet<string>>(new Set())
  const isCall = filters.list === 'call'
  const beds = useInfiniteQuery(
    api.due.beds.infiniteOptions({
      input: (cursor: string | undefined) => ({
        waterSupplyId: filters.supply,
        minAgeYears: filters.age,
        minChance12Months: filters.chance === undefined ? undefined : filters.chance / 100,
        month: filters.month,
        plannedMonth: filters.planned,
        ...(isCall ? { toCall: true, sort: 'failed' as const } : { sort: filters.sort }),
        limit: 50,
        cursor,
      }),
      initialPageParam: undefined,
      getNextPageParam: (last) => last.nextCursor ?? undefined,
    }),
  )
  const rows = beds.data?.pages.flatMap((one) => one.rows) ?? []
  const failure = beds.error ? readFailure(beds.error) : null
  // By what an answer tells there is no column to sort by.
  const isTelling = !isCall && filters.sort === 'telling'
  const sort = isCall || filters.sort === 'telling' ? undefined : SORT_KEYS[filters.sort]

  return (
    <>
      <DueTabs desk={desk} list={filters.list} change={change} />
      <DueFilterBar picture={picture} plan={plan} filters={filters} change={change} selectedCount={selected.size}>
        {mayPropose && plan && filters.planned ? <ProposePlannedPart planId={plan.id} month={filters.planned} /> : null}
        {mayPropose ? <ProposeJobsPart bedIds={[...selected]} onDone={() => setSelected(new Set())} /> : null}
      </DueFilterBar>
      {failure ? (
        <Problem happened={failure.message} reference={failure.requestId} onRetry={() => void beds.refetch()} retrying={beds.isFetching} />
      ) : null}
      {isTelling ? (
        <p className="mb-3 max-w-[75ch] text-soft">
          In the order of what an answer would tell about next year’s count: a bed that may as well have failed as not tells most.{' '}
          <button
            type="button"
            className="underline decoration-edge underline-offset-4 hover:decoration-ink"
            onClick={() => change({ sort: 'chance' })}
          >
            By chance of failing instead
          </button>
        </p>
      ) : null}
      {beds.isPending ? <Skeleton lines={12} label="Loading the beds" /> : null}
      {beds.isSuccess ? (
        <DataTable
          caption={isCall ? 'Beds to call about' : isTelling ? 'Calls that tell most' : 'Beds that come due'}
          columns={isCall || isTelling ? callColumns(today, me, firm) : dueColumns(today, me, firm)}
          rows={rows}
          rowKey={(row) => row.bedId}
          rowName={(row) => row.siteLabel}
          rowHref={(row) => `/beds/${row.bedId}`}
          link={Link}
          sort={sort}
          onSort={isCall || isTelling ? undefined : ({ key }) => change({ list: 'all', sort: SORT_OF[key] ?? 'chance' })}
          selected={mayPropose ? selected : undefined}
          onSelect={mayPropose ? setSelected : undefined}
          busy={beds.isFetching && !beds.isFetchingNextPage}
          empty={
            picture.beds === 0 ? (
              <EmptyOrFirst first="No beds in service yet" title="The forecast is being made">
                Your sites are on record. When their beds come due appears here, usually within a minute.
              </EmptyOrFirst>
            ) : isCall ? (
              <Empty title="Nobody to call" action={<Button onClick={() => change({ list: 'all' })}>Show all beds</Button>}>
                No bed has more likely failed than not without a rebed on its way.
              </Empty>
            ) : (
              <Empty
                title="No bed fits these filters"
                action={
                  <Button
                    onClick={() =>
                      change({ supply: undefined, age: undefined, chance: undefined, month: undefined, planned: undefined, list: 'all' })
                    }
                  >
                    Show all beds
                  </Button>
                }
              >
                {showWhole(picture.beds, display)} beds are watched; the filters leave none of them.
              </Empty>
            )
          }
        />
      ) : null}
      {rows.length > 0 ? (
        <Pager
          summary={`${showWhole(rows.length, display)} shown`}
          onNext={beds.hasNextPage ? () => void beds.fetchNextPage() : undefined}
          busy={beds.isFetchingNextPage}
        />
      ) : null}
    </>
  )
}
