'use client'
import type { VisitPage } from '@almanac/contract/visits'
import type { Procedure } from '@almanac/softener/procedure/procedure-types'
import { Button } from '@almanac/ui/button'
import { useDisplay } from '@almanac/ui/display'
import { LinkButton } from '@almanac/ui/link-button'
import { Notice } from '@almanac/ui/notice'
import { PageHead } from '@almanac/ui/page-head'
import { Section } from '@almanac/ui/section'
import { formatAmount } from '@almanac/units/amount-words'
import { formatClock, formatDuration } from '@almanac/units/format-clock'
import { formatList } from '@almanac/units/format-list'
import { useWords } from '@almanac/words/use-words'
import Link from 'next/link'
import { useJobNote } from '@/client/use-job-note'
import { DrawingWhenSeen } from './drawing-when-seen.tsx'
import { StartVisit } from './start-visit.tsx'
import { VisitFacts } from './visit-facts.tsx'
import { useKitTitle, VisitKit } from './visit-kit.tsx'

type Props = { visit: VisitPage; procedure: Procedure; onStart: () => void; onResume: () => void }

/** What to know before the first step: where, who, the load, the tank. */
export function VisitBrief({ visit, procedure, onStart, onResume }: Props) {
  const display = useDisplay()
  const words = useWords('visit')
  const kitTitle = useKitTitle(visit)
  const kinds = useWords('jobKind')
  const note = useJobNote()({ askedFor: visit.askedFor, notes: visit.jobNotes })
  return (
    <>
      <PageHead
        title={words('at', { kind: kinds(visit.kind), site: visit.siteLabel })}
        lead={words('lead', {
          from: formatClock(visit.startsAt, display),
          until: formatClock(visit.endsAt, display),
          people: formatList(visit.people, display),
          duration: formatDuration(procedure.minutes, display),
          count: procedure.steps.length,
        })}
      />
      {note ? <Notice kind="mind">{note}</Notice> : null}
      <VisitFacts visit={visit} />
      {visit.bed && visit.kind !== 'rebed' ? (
        <p className="my-4">
          <LinkButton href={`/whats-wrong?bedId=${visit.bed.bedId}`} link={Link}>
            {words('whatsWrong')}
          </LinkButton>
        </p>
      ) : null}
      {/* A visit that the tablet kept under the release before has none. */}
      {visit.materials?.length ? (
        <Section title={words('handOver')}>
          <ul>
            {visit.materials.map((line) => (
              <li key={line.name}>
                {formatAmount(line.quantity, line.unit, display)} · {line.name}
              </li>
            ))}
          </ul>
          <p className="mt-2 text-soft">{words('handOverCounted')}</p>
        </Section>
      ) : null}
      {visit.kind === 'rebed' && visit.bed ? (
        <Section title={kitTitle}>
          <VisitKit visit={visit} />
        </Section>
      ) : null}
      {visit.bed ? <DrawingWhenSeen visit={visit} /> : null}
      {visit.kind === 'rebed' && visit.bed ? (
        <p className="my-4">
          <LinkButton href={`/api/beds/${visit.bed.bedId}/plan`} file>
            {words('plan')}
          </LinkButton>
        </p>
      ) : null}
      {visit.state === 'called-off' ? null : (
        <div className="sticky bottom-0 flex flex-col gap-3 border-t border-line bg-paper py-4">
          {visit.state === 'under-way' ? (
            <Button kind="ink" wide onClick={onResume}>
              {words('resume')}
            </Button>
          ) : (
            <StartVisit visit={visit} onStart={onStart} />
          )}
        </div>
      )}
    </>
  )
}
