'use client'
import { Button } from '@almanac/ui/button'
import { useDisplay } from '@almanac/ui/display'
import { Notice } from '@almanac/ui/notice'
import { Problem } from '@almanac/ui/problem'
import { TextLink } from '@almanac/ui/text-link'
import { formatLongMonth } from '@almanac/units/format-day'
import Link from 'next/link'
import { readFailure } from '@/client/failure'
import { useSession } from '@/client/providers'
import { useCommand } from '@/client/use-command'

type Turn = { agreementId: string; dueDay: string }

/** Makes jobs of turns that somebody looked at, and says how many came of it and why others did not. */
export function ProposeTurns({ month, turns, onDone }: { month: string; turns: readonly Turn[]; onDone?: () => void }) {
  const display = useDisplay()
  const { api } = useSession()
  const propose = useCommand(api.agreements.propose.mutationOptions(), { onDone })
  const failure = propose.error ? readFailure(propose.error) : null
  const results = propose.data?.results ?? []
  const made = results.filter((one) => one.status === 'proposed').length
  const refused = results.flatMap((one) => (one.status === 'refused' ? [one.reason] : []))
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
      {failure ? <Problem happened={failure.message} reference={failure.requestId} /> : null}
      {results.length > 0 ? (
        <Notice
          kind={refused.length > 0 ? 'mind' : 'done'}
          action={
            <TextLink href="/jobs" link={Link}>
              See jobs
            </TextLink>
          }
        >
          {made === 1 ? '1 job added.' : `${made} jobs added.`}
          {refused.length > 0 ? ` ${refused.length} not: ${[...new Set(refused)].slice(0, 3).join(' ')}` : ''}
        </Notice>
      ) : null}
    </>
  )
}
