'use client'
import { Button } from '@almanac/ui/button'
import { useDisplay } from '@almanac/ui/display'
import { formatLongMonth } from '@almanac/units/format-day'
import { ProposalAnswer } from '@/client/proposal-answer'
import { useSession } from '@/client/providers'
import { useCommand } from '@/client/use-command'

type Turn = { agreementId: string; dueDay: string }

/** Makes jobs of turns that somebody looked at, and says how many came of it and why others did not. */
export function ProposeTurns({ month, turns, onDone }: { month: string; turns: readonly Turn[]; onDone?: () => void }) {
  const display = useDisplay()
  const { api } = useSession()
  const propose = useCommand(api.agreements.propose.mutationOptions(), { onDone })
  return (
    <>
      <Button
        kind="ink"
        busy={propose.isPending}
        busyLabel="Adding jobs"
        disabled={turns.length === 0}
        onClick={() => propose.send({ month, turns: turns.map(({ agreementId, dueDay }) => ({ agreementId, dueDay })) })}
      >
        {turns.length === 1 ? 'Add 1 job' : `Add ${turns.length} jobs`} for {formatLongMonth(month, display)}
      </Button>
      <ProposalAnswer made="added" error={propose.error} answer={propose.data} />
    </>
  )
}
