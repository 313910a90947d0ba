'use client'
import type { PlanAsked } from '@almanac/contract/plans'
import { Button } from '@almanac/ui/button'
import { Problem } from '@almanac/ui/problem'
import { useRouter } from 'next/navigation'
import { readFailure } from '@/client/failure'
import { useSession } from '@/client/providers'
import { useCommand } from '@/client/use-command'

/** How many days each kind of plan looks at. */
const DAYS: Readonly<Record<PlanAsked['kind'], number>> = { week: 7, 'sheet-off': 5, 'fewer-people': 5, 'other-vehicle': 5, crews: 1 }

/** Has a plan worked out and goes to its page. */
export function useStartPlan(fromDay: string) {
  const { api } = useSession()
  const router = useRouter()
  const start = useCommand(api.plans.start.mutationOptions(), { onDone: ({ planId }) => router.push(`/day-sheets/plan?id=${planId}`) })
  return {
    begin: (asked: PlanAsked) => start.send({ fromDay, days: DAYS[asked.kind], asked }),
    busy: start.isPending,
    failure: start.error,
  }
}

/** Asks who goes with whom on a day: of those who are on no sheet yet. */
export function FormCrewsPart({ day }: { day: string }) {
  const { begin, busy, failure } = useStartPlan(day)
  return (
    <>
      <Button busy={busy} onClick={() => begin({ kind: 'crews' })}>
        Who goes with whom?
      </Button>
      {failure ? <Problem happened={readFailure(failure).message} /> : null}
    </>
  )
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
