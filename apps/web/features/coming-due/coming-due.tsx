'use client'
import { LinkButton } from '@almanac/ui/link-button'
import { PageHead } from '@almanac/ui/page-head'
import { Problem } from '@almanac/ui/problem'
import { Skeleton } from '@almanac/ui/skeleton'
import { useQuery } from '@tanstack/react-query'
import Link from 'next/link'
import { readFailure } from '@/client/failure'
import { usePermission, useSession } from '@/client/providers'
import { DueLead } from './due-lead.tsx'
import { DueList } from './due-list.tsx'
import { DuePicture } from './due-picture.tsx'
import { RebedPlanPart } from './rebed-plan.tsx'
import { useDueFilters } from './use-due-filters.ts'

/** What comes due: the month picture on top, the beds under it. */
export function ComingDue() {
  const { api } = useSession()
  const [filters, change] = useDueFilters()
  const months = useQuery(api.due.months.queryOptions({ input: { waterSupplyId: filters.supply } }))
  const mayJudge = usePermission('judge:forecast')
  const plan = useQuery(api.forecasts.plan.queryOptions())
  const picture = months.data
  const failure = months.error ? readFailure(months.error) : null

  return (
    <>
      <PageHead
        title="Coming due"
        lead={picture ? <DueLead picture={picture} /> : undefined}
        actions={
          mayJudge ? (
            <>
              <LinkButton href="/policy" link={Link}>
                Best age to rebed
              </LinkButton>
              <LinkButton href="/track-record" link={Link}>
                Track record
              </LinkButton>
            </>
          ) : undefined
        }
      />
      {failure ? (
        <Problem
          happened={failure.message}
          reference={failure.requestId}
          onRetry={() => void months.refetch()}
          retrying={months.isFetching}
        />
      ) : null}
      {months.isPending ? <Skeleton lines={8} label="Loading the month picture" /> : null}
      {picture && picture.months.length > 0 ? (
        <DuePicture picture={picture} plan={plan.data ?? null} filters={filters} change={change} />
      ) : null}
      {plan.data && !filters.supply && filters.view ? <RebedPlanPart plan={plan.data} /> : null}
      {picture ? <DueList picture={picture} plan={plan.data ?? null} filters={filters} change={change} /> : null}
    </>
  )
}
