'use client'
import { Notice } from '@almanac/ui/notice'
import { Problem } from '@almanac/ui/problem'
import { TextLink } from '@almanac/ui/text-link'
import Link from 'next/link'
import { readFailure } from './failure.ts'

type Answer = { results: ({ status: 'proposed' } | { status: 'refused'; reason: string })[] }

/** How many jobs came of a proposal, and why others did not; `made` says what they are then. */
export function ProposalAnswer({ error, answer, made }: { error: Error | null; answer: Answer | undefined; made: 'proposed' | 'added' }) {
  const failure = error ? readFailure(error) : null
  const results = answer?.results ?? []
  const count = results.filter((one) => one.status === 'proposed').length
  const refused = results.flatMap((one) => (one.status === 'refused' ? [one.reason] : []))
  return (
    <>
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
          {count === 1 ? `1 job ${made}.` : `${count} jobs ${made}.`}
          {refused.length > 0 ? ` ${refused.length} not: ${[...new Set(refused)].slice(0, 3).join(' ')}` : ''}
        </Notice>
      ) : null}
    </>
  )
}
