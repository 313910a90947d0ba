'use client'
import { Button } from '@almanac/ui/button'
import { useDisplay } from '@almanac/ui/display'
import { formatLongMonth } from '@almanac/units/format-day'
import { ProposalAnswer } from '@/client/proposal-answer'
import { useSession } from '@/client/providers'
import { useCommand } from '@/client/use-command'

/** Turns all beds that the levelled plan gives to a month into proposed jobs, each to be done within that month. */
export function ProposePlannedPart({ planId, month }: { planId: string; month: string }) {
  const display = useDisplay()
  const { api } = useSession()
  const propose = useCommand(api.jobs.proposePlanned.mutationOptions())
  return (
    <>
      <Button busy={propose.isPending} busyLabel="Proposing" onClick={() => propose.send({ planId, month })}>
        Propose all planned for {formatLongMonth(month, display)}
      </Button>
      <ProposalAnswer made="proposed" error={propose.error} answer={propose.data} />
    </>
  )
}
