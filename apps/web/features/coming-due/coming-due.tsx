'use client'
import type { Desk } from '@almanac/contract/desk'
import { LinkButton } from '@almanac/ui/link-button'
import { PageHead } from '@almanac/ui/page-head'
import { Problem } from '@almanac/ui/problem'
import { Skeleton } from '@almanac/ui/skeleton'
import { useQuery } from '@tanstack/react-query'
import Link from 'next/link'
import { readFailure } from '@/client/failure'
import { usePermission, useSession } from '@/client/providers'
import { DeskHead } from './desk-head.tsx'
import { DeskPicture } from './desk-picture.tsx'
import { DueList } from './due-list.tsx'
import { DuePicture } from './due-picture.tsx'
import { RebedPlanPart } from './rebed-plan.tsx'
import { useDueFilters } from './use-due-filters.ts'

/** Rebeds that the crews can do in a usual month of the next twelve. */
const capacityOf = ({ months, hoursEach }: Desk) =>
  Math.round(months.reduce((sum, one) => sum + one.crewHours, 0) / Math.max(1, months.length) / hoursEach)

/** What comes due: whom to call, what to order and which month is short; then the hours by month, and the beds under them. */
export function ComingDue() {
  const { api } = useSession()
  const [filters, change] = useDueFilters()
  const months = useQuery(api.due.months.queryOptions({ input: { waterSupplyId: filters.supply } }))
  const desk = useQuery(api.due.desk.queryOptions())
  const mayJudge = usePermission('judge:forecast')
  const plan = useQuery(api.forecasts.plan.queryOptions())
  const picture = months.data
  const failed = months.error ?? desk.error
  const failure = failed ? readFailure(failed) : null
  const retry = () => {
    void months.refetch()
    void desk.refetch()
  }
  // Hours are of the whole company: a supply, five years and groups have a picture of beds.
  const isHours = !filters.supply && !filters.view

  return (
    <>
      <PageHead
        title="Coming due"
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
        <Problem happened={failure.message} reference={failure.requestId} onRetry={retry} retrying={months.isFetching || desk.isFetching} />
      ) : null}
      {months.isPending || desk.isPending ? <Skeleton lines={8} label="Loading what comes due" /> : null}
      {picture && desk.data ? <DeskHead desk={desk.data} picture={picture} onMonth={(month) => change({ month })} /> : null}
      {picture && desk.data && picture.months.length > 0 ? (
        <DuePicture picture={picture} capacity={capacityOf(desk.data)} plan={plan.data ?? null} filters={filters} change={change}>
          {isHours ? <DeskPicture desk={desk.data} filters={filters} change={change} /> : null}
        </DuePicture>
      ) : null}
      {plan.data && !filters.supply && filters.view ? <RebedPlanPart plan={plan.data} /> : null}
      {picture && desk.data ? (
        <DueList desk={desk.data} picture={picture} plan={plan.data ?? null} filters={filters} change={change} />
      ) : null}
    </>
  )
}
