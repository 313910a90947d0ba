'use client'
import type { VisitPage } from '@almanac/contract/visits'
import { LinkButton } from '@almanac/ui/link-button'
import { Notice } from '@almanac/ui/notice'
import { useWords } from '@almanac/words/use-words'
import Link from 'next/link'
import { Piece } from '@/client/piece'
import { SEND_REPORT } from './late-pieces.ts'

/** A visit that was closed out; `waits` while the office has not heard of it. */
export function VisitClosed({ visit, waits }: { visit: VisitPage; waits: boolean }) {
  const words = useWords('visit')
  const outcomes = useWords('outcome')
  const outcome = visit.outcome ? outcomes(visit.outcome).toLowerCase() : null
  return (
    <>
      <Notice kind={waits ? 'said' : 'done'}>
        {outcome === null ? words('closedOutBare') : words(waits ? 'waits' : 'closedOut', { outcome })}
      </Notice>
      <div className="flex flex-wrap gap-4 py-4">
        <LinkButton href="/today" link={Link} kind="ink">
          {words('backToToday')}
        </LinkButton>
        {waits ? null : (
          <>
            <Piece of={SEND_REPORT} give={{ visitId: visit.visitId }} meanwhile={null} />
            <LinkButton href={`/sites/${visit.siteId}`} link={Link}>
              {words('seeSite')}
            </LinkButton>
          </>
        )}
      </div>
    </>
  )
}
