'use client'
import type { VisitPage } from '@almanac/contract/visits'
import type { Procedure } from '@almanac/softener/procedure/procedure-types'
import { twinName } from '@almanac/softener/tanks/twin-name'
import { Button } from '@almanac/ui/button'
import { DefinitionList } from '@almanac/ui/definition-list'
import { useDisplay } from '@almanac/ui/display'
import { LinkButton } from '@almanac/ui/link-button'
import { Notice } from '@almanac/ui/notice'
import { PageHead } from '@almanac/ui/page-head'
import { formatClock, formatDuration } from '@almanac/units/format-clock'
import { formatList } from '@almanac/units/format-list'
import { useWords } from '@almanac/words/use-words'
import Link from 'next/link'
import { directionsTo } from '@/client/directions'
import { telOf } from '@/client/phone-link'
import { useRebedFirm } from '@/client/use-rebed-firm'
import { StartVisit } from './start-visit.tsx'
import { VisitDrawing } from './visit-drawing.tsx'
import { VisitKit } from './visit-kit.tsx'

type Props = { visit: VisitPage; procedure: Procedure; onStart: () => void; onResume: () => void }

/** What to know before the first step: where, who, the load, the tank. */
export function VisitBrief({ visit, procedure, onStart, onResume }: Props) {
  const display = useDisplay()
  const words = useWords('visit')
  const kinds = useWords('jobKind')
  const roles = useWords('contactRole')
  const firm = useRebedFirm()
  const softener = visit.twin
    ? words('softenerTank', {
        softener: visit.softenerLabel ?? words('softener'),
        tank: twinName(visit.twin, firm),
        arrangement: words(`arrangement/${visit.twin.arrangement}`),
      })
    : visit.softenerLabel
  const place = [visit.street, visit.town].filter(Boolean).join(', ')
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
      {visit.jobNotes ? <Notice kind="mind">{visit.jobNotes}</Notice> : null}
      <DefinitionList
        facts={[
          { name: words('where'), value: place },
          { name: words('access'), value: visit.accessNotes },
          ...visit.contacts.map((contact, i) => ({
            key: `contact-${i}`,
            name: roles(contact.role),
            value: (
              <>
                {contact.name ?? words('nameUnknown')}{' '}
                {contact.phone ? (
                  <a href={telOf(contact.phone)} className="inline-flex min-h-control items-center underline underline-offset-4">
                    {contact.phone}
                  </a>
                ) : null}
              </>
            ),
          })),
          { name: words('softener'), value: softener },
        ]}
      />
      <div className="my-4 flex flex-wrap gap-3">
        {visit.contacts.map((contact) =>
          contact.phone ? (
            <LinkButton key={`${contact.role} ${contact.name} ${contact.phone}`} href={telOf(contact.phone)}>
              {words('call', { name: contact.name ?? roles(contact.role).toLowerCase() })}
            </LinkButton>
          ) : null,
        )}
        {place ? <LinkButton href={directionsTo(place)}>{words('directions')}</LinkButton> : null}
      </div>
      {visit.bed && visit.kind !== 'rebed' ? (
        <p className="my-4">
          <LinkButton href={`/whats-wrong?bedId=${visit.bed.bedId}`} link={Link}>
            {words('whatsWrong')}
          </LinkButton>
        </p>
      ) : null}
      {visit.kind === 'rebed' && visit.bed ? <VisitKit visit={visit} /> : null}
      {visit.bed ? <VisitDrawing visit={visit} /> : null}
      {visit.kind === 'rebed' && visit.bed ? (
        <p className="my-4">
          <LinkButton href={`/api/beds/${visit.bed.bedId}/plan`}>{words('plan')}</LinkButton>
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
