'use client'
import type { VisitPage } from '@almanac/contract/visits'
import { jobKindWords } from '@almanac/records/job-kind'
import type { Procedure } from '@almanac/softener/procedure/procedure-types'
import { Button } from '@almanac/ui/button'
import { DefinitionList } from '@almanac/ui/definition-list'
import { LinkButton } from '@almanac/ui/link-button'
import { Notice } from '@almanac/ui/notice'
import { PageHead } from '@almanac/ui/page-head'
import { Problem } from '@almanac/ui/problem'
import Link from 'next/link'
import { clockIn, durationWords } from '@/client/clock-words'
import { readFailure } from '@/client/failure'
import { useSession } from '@/client/providers'
import { useCommand } from '@/client/use-command'
import { VisitDrawing } from './visit-drawing.tsx'
import { VisitKit } from './visit-kit.tsx'

type Props = { visit: VisitPage; procedure: Procedure; onStarted: () => void }

/** What to know before the first step: where, who, the load, the tank. */
export function VisitBrief({ visit, procedure, onStarted }: Props) {
  const { api, me } = useSession()
  const start = useCommand(api.visits.start.mutationOptions(), { onDone: onStarted })
  const { timeZone } = me.company
  const failure = start.error ? readFailure(start.error) : null
  return (
    <>
      <PageHead
        title={`${jobKindWords[visit.kind]} at ${visit.siteLabel}`}
        lead={`${clockIn(timeZone, visit.startsAt)} to ${clockIn(timeZone, visit.endsAt)}, ${visit.people.join(' and ')}. About ${durationWords(procedure.minutes)} of work in ${procedure.steps.length} steps.`}
      />
      {visit.jobNotes ? <Notice kind="mind">{visit.jobNotes}</Notice> : null}
      <DefinitionList
        facts={[
          { name: 'Where', value: [visit.street, visit.town].filter(Boolean).join(', ') },
          { name: 'Access', value: visit.accessNotes },
          ...visit.contacts.map((contact, i) => ({
            key: `contact-${i}`,
            name: contact.role.charAt(0).toUpperCase() + contact.role.slice(1),
            value: (
              <>
                {contact.name ?? 'name not known'}{' '}
                {contact.phone ? (
                  <a href={`tel:${contact.phone}`} className="inline-flex min-h-control items-center underline underline-offset-4">
                    {contact.phone}
                  </a>
                ) : null}
              </>
            ),
          })),
          { name: 'Softener', value: visit.softenerLabel },
        ]}
      />
      {visit.bed && visit.kind !== 'rebed' ? (
        <p className="my-4">
          <LinkButton href={`/whats-wrong?bedId=${visit.bed.bedId}`} link={Link}>
            What is wrong?
          </LinkButton>
        </p>
      ) : null}
      {visit.kind === 'rebed' && visit.bed ? <VisitKit visit={visit} /> : null}
      {visit.bed ? <VisitDrawing visit={visit} /> : null}
      {visit.kind === 'rebed' && visit.bed ? (
        <p className="my-4">
          <LinkButton href={`/api/beds/${visit.bed.bedId}/plan`}>Rebed plan (PDF)</LinkButton>
        </p>
      ) : null}
      {failure ? (
        <Problem
          happened={failure.message}
          todo="Without a connection you can begin all the same: the office hears of it with the close-out."
        />
      ) : null}
      <div className="sticky bottom-0 flex flex-col gap-3 border-t border-line bg-paper py-4">
        {visit.state === 'under-way' ? (
          <Button kind="ink" wide onClick={onStarted}>
            Go on with the visit
          </Button>
        ) : (
          <Button
            kind="ink"
            wide
            busy={start.isPending}
            busyLabel="Starting"
            onClick={() => start.send({ visitId: visit.visitId, version: visit.version })}
          >
            Start the visit
          </Button>
        )}
        {failure ? (
          <Button wide onClick={onStarted}>
            Begin without telling the office
          </Button>
        ) : null}
      </div>
    </>
  )
}
