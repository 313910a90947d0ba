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
import { Problem } from '@almanac/ui/problem'
import { formatClock, formatDuration } from '@almanac/units/format-clock'
import { formatList } from '@almanac/units/format-list'
import { useWords } from '@almanac/words/use-words'
import Link from 'next/link'
import { readFailure } from '@/client/failure'
import { telOf } from '@/client/phone-link'
import { useSession } from '@/client/providers'
import { useCommand } from '@/client/use-command'
import { useRebedFirm } from '@/client/use-rebed-firm'
import { VisitDrawing } from './visit-drawing.tsx'
import { VisitKit } from './visit-kit.tsx'

type Props = { visit: VisitPage; procedure: Procedure; onStarted: () => void }

/** What to know before the first step: where, who, the load, the tank. */
export function VisitBrief({ visit, procedure, onStarted }: Props) {
  const display = useDisplay()
  const { api } = useSession()
  const start = useCommand(api.visits.start.mutationOptions(), { onDone: onStarted })
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
  const failure = start.error ? readFailure(start.error) : null
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
          { name: words('where'), value: [visit.street, visit.town].filter(Boolean).join(', ') },
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
      {failure ? <Problem happened={failure.message} todo={words('startOfflineHint')} /> : null}
      <div className="sticky bottom-0 flex flex-col gap-3 border-t border-line bg-paper py-4">
        {visit.state === 'under-way' ? (
          <Button kind="ink" wide onClick={onStarted}>
            {words('resume')}
          </Button>
        ) : (
          <Button
            kind="ink"
            wide
            busy={start.isPending}
            busyLabel={words('starting')}
            onClick={() => start.send({ visitId: visit.visitId, version: visit.version })}
          >
            {words('start')}
          </Button>
        )}
        {failure ? (
          <Button wide onClick={onStarted}>
            {words('startOffline')}
          </Button>
        ) : null}
      </div>
    </>
  )
}
