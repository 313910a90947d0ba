import type { VisitPage } from '@almanac/contract/visits'
import { visitOutcomeWords } from '@almanac/records/visit-outcome'
import { LinkButton } from '@almanac/ui/link-button'
import { Notice } from '@almanac/ui/notice'
import Link from 'next/link'

/** A visit that has reached the office. */
export function VisitClosed({ visit }: { visit: VisitPage }) {
  return (
    <>
      <Notice kind="done">
        Closed out: {visit.outcome ? visitOutcomeWords[visit.outcome].toLowerCase() : 'finished'}. It is at the office, once.
      </Notice>
      <div className="flex flex-wrap gap-4 py-4">
        <LinkButton href="/today" link={Link} kind="ink">
          Back to today's work
        </LinkButton>
        <LinkButton href={`/sites/${visit.siteId}`} link={Link}>
          See the site
        </LinkButton>
      </div>
    </>
  )
}
