'use client'
import { Button } from '@almanac/ui/button'
import { Notice } from '@almanac/ui/notice'
import { Problem } from '@almanac/ui/problem'
import { TextLink } from '@almanac/ui/text-link'
import Link from 'next/link'
import { readFailure } from '@/client/failure'
import { useSession } from '@/client/providers'
import { useCommand } from '@/client/use-command'

/** Turns the ticked beds into proposed jobs, which the dispatcher finds under Jobs. Says how many came of it, and why others did not. */
export function ProposeJobs({ bedIds, onDone }: { bedIds: string[]; onDone: () => void }) {
  const { api } = useSession()
  const propose = useCommand(api.jobs.propose.mutationOptions(), { onDone })
  const failure = propose.error ? readFailure(propose.error) : null
  const results = propose.data?.results ?? []
  const made = results.filter((one) => one.status === 'proposed').length
  const refused = results.flatMap((one) => (one.status === 'refused' ? [one.reason] : []))
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
          {made === 1 ? '1 job proposed.' : `${made} jobs proposed.`}
          {refused.length > 0 ? ` ${refused.length} not: ${[...new Set(refused)].slice(0, 3).join(' ')}` : ''}
        </Notice>
      ) : null}
    </>
  )
}
