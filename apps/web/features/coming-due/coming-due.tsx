'use client'
import { MonthPlot } from '@almanac/ui/month-plot'
import { PageHead } from '@almanac/ui/page-head'
import { Problem } from '@almanac/ui/problem'
import { Skeleton } from '@almanac/ui/skeleton'
import { useQuery } from '@tanstack/react-query'
import { readFailure } from '@/client/failure'
import { useSession } from '@/client/providers'
import { DueLead } from './due-lead.tsx'
import { DueList } from './due-list.tsx'
import { useDueFilters } from './use-due-filters.ts'

/** What comes due: the month picture on top, the beds under it. */
export function ComingDue() {
  const { api } = useSession()
  const [filters, change] = useDueFilters()
  const months = useQuery(api.due.months.queryOptions({ input: { waterSupplyId: filters.supply } }))
  const picture = months.data
  const failure = months.error ? readFailure(months.error) : null

  return (
    <>
      <PageHead title="Coming due" lead={picture ? <DueLead picture={picture} /> : undefined} />
      {failure ? (
        <Problem
          happened={failure.message}
          reference={failure.requestId}
          onRetry={() => void months.refetch()}
          retrying={months.isFetching}
        />
      ) : null}
      {months.isPending ? <Skeleton lines={8} label="Reading the month picture" /> : null}
      {picture && picture.months.length > 0 ? (
        <MonthPlot
          title="Beds expected to fail, by month"
          months={picture.months.map(({ month, mean, low, high, booked }) => ({ month, mean, p10: low, p90: high, booked }))}
          capacity={picture.rebedsPerMonth}
          selected={filters.month ?? null}
          onSelect={(month) => change({ month: month ?? undefined })}
        />
      ) : null}
      {picture ? <DueList picture={picture} filters={filters} change={change} /> : null}
    </>
  )
}
