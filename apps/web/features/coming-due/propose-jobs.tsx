'use client'
import { Button } from '@almanac/ui/button'
import { ProposalAnswer } from '@/client/proposal-answer'
import { useSession } from '@/client/providers'
import { useCommand } from '@/client/use-command'

/** Turns the ticked beds into proposed jobs, which the dispatcher finds under Jobs. */
export function ProposeJobsPart({ bedIds, onDone }: { bedIds: string[]; onDone: () => void }) {
  const { api } = useSession()
  const propose = useCommand(api.jobs.propose.mutationOptions(), { onDone })
  return (
    <>
      <Button
        kind="ink"
        busy={propose.isPending}
        busyLabel="Proposing"
        disabled={bedIds.length === 0}
        onClick={() => propose.send({ kind: 'rebed', beds: bedIds.map((bedId) => ({ bedId })) })}
      >
        Propose jobs
      </Button>
      <ProposalAnswer made="proposed" error={propose.error} answer={propose.data} />
    </>
  )
}
