'use client'
import { Button } from '@almanac/ui/button'
import { useSession } from '@/client/providers'
import { useCommand } from '@/client/use-command'
import { monthName } from './due-words.ts'
import { ProposalAnswer } from './proposal-answer.tsx'

/** Turns all beds that the levelled plan gives to a month into proposed jobs, each to be done within that month. */
export function ProposePlanned({ planId, month }: { planId: string; month: string }) {
  const { api } = useSession()
  const propose = useCommand(api.jobs.proposePlanned.mutationOptions())
  return (
    <>
      <Button busy={propose.isPending} busyLabel="Proposing" onClick={() => propose.send({ planId, month })}>
        Propose all planned for {monthName(month)}
      </Button>
      <ProposalAnswer error={propose.error} answer={propose.data} />
    </>
  )
}
