'use client'
import type { VisitPage } from '@almanac/contract/visits'
import { LinkButton } from '@almanac/ui/link-button'
import { Notice } from '@almanac/ui/notice'
import { useWords } from '@almanac/words/use-words'
import Link from 'next/link'

/** A visit that has reached the office. */
export function VisitClosed({ visit }: { visit: VisitPage }) {
  const words = useWords('visit')
  const outcomes = useWords('outcome')
  return (
    <>
      <Notice kind="done">
        {visit.outcome ? words('closedOut', { outcome: outcomes(visit.outcome).toLowerCase() }) : words('closedOutBare')}
      </Notice>
      <div className="flex flex-wrap gap-4 py-4">
        <LinkButton href="/today" link={Link} kind="ink">
          {words('backToToday')}
        </LinkButton>
        <LinkButton href={`/sites/${visit.siteId}`} link={Link}>
          {words('seeSite')}
        </LinkButton>
      </div>
    </>
  )
}
