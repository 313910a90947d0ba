'use client'
import type { PlanAsked } from '@almanac/contract/plans'
import { Button } from '@almanac/ui/button'
import { Problem } from '@almanac/ui/problem'
import { useRouter } from 'next/navigation'
import { readFailure } from '@/client/failure'
import { useSession } from '@/client/providers'
import { useCommand } from '@/client/use-command'

const WEEK_DAYS = 7
const MISHAP_DAYS = 5

/** Has a plan worked out and goes to its page. */
export function useStartPlan(fromDay: string) {
  const { api } = useSession()
  const router = useRouter()
  const start = useCommand(api.plans.start.mutationOptions(), { onDone: ({ planId }) => router.push(`/day-sheets/plan?id=${planId}`) })
  return {
    begin: (asked: PlanAsked) => start.send({ fromDay, days: asked.kind === 'week' ? WEEK_DAYS : MISHAP_DAYS, asked }),
    busy: start.isPending,
    failure: start.error,
  }
}

/** Asks for a plan of the week from this day on. */
export function StartPlanPart({ day }: { day: string }) {
  const { begin, busy, failure } = useStartPlan(day)
  return (
    <>
      <Button kind="ink" busy={busy} onClick={() => begin({ kind: 'week' })}>
        Plan the week
      </Button>
      {failure ? <Problem happened={readFailure(failure).message} /> : null}
    </>
  )
}
