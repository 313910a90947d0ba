'use client'
import type { WorkLine } from '@almanac/contract/visits'
import { useDisplay } from '@almanac/ui/display'
import { Empty } from '@almanac/ui/empty'
import { FieldFrame } from '@almanac/ui/field-frame'
import { LinkButton } from '@almanac/ui/link-button'
import { Notice } from '@almanac/ui/notice'
import { PageHead } from '@almanac/ui/page-head'
import { Problem } from '@almanac/ui/problem'
import { Skeleton } from '@almanac/ui/skeleton'
import { formatDayTitle, formatNearDay } from '@almanac/units/format-day'
import { useWords } from '@almanac/words/use-words'
import Link from 'next/link'
import { useEffect, useRef } from 'react'
import { readFailure } from '@/client/failure'
import { KeptNote, useWaitingWords, WaitingNote } from '@/client/field/waiting-note'
import { FieldTools } from '@/client/field-tools'
import { LatePicturesNote } from '@/client/photographs/late-pictures-note'
import { useToday } from '@/client/use-today'
import { useWork } from './use-work.ts'
import { WorkListLine } from './work-line.tsx'

type PartProps = { title: string; visits: readonly WorkLine[]; showCrew: boolean; dayOf?: (visit: WorkLine) => string }

/** Visits under a heading; nothing where there are none. */
function WorkPart({ title, visits, showCrew, dayOf }: PartProps) {
  if (visits.length === 0) return null
  return (
    <>
      <h2 className="mt-8 mb-2 text-h2 font-semibold">{title}</h2>
      <ul className="border-t border-line">
        {visits.map((visit) => (
          <WorkListLine key={visit.visitId} visit={visit} showCrew={showCrew} day={dayOf?.(visit)} />
        ))}
      </ul>
    </>
  )
}

/** The technician's day: one column, the next visit first, then tomorrow. All of it is shown without the server too. */
export function Today() {
  const display = useDisplay()
  const words = useWords('today')
  const clock = useToday()
  const work = useWork()
  const waiting = useWaitingWords()
  const { refetch } = work
  const asked = useRef(clock)
  useEffect(() => {
    if (asked.current === clock) return
    asked.current = clock
    void refetch()
  }, [clock, refetch])
  const showCrew = !work.mine
  return (
    <FieldFrame title={words('title')} status={waiting} tools={<FieldTools />}>
      <PageHead title={formatDayTitle(work.day, clock, display)} lead={work.data && showCrew ? words('allCrews') : undefined} />
      <WaitingNote />
      <LatePicturesNote />
      {work.data ? <KeptNote at={work.keptAt} /> : null}
      {work.error ? (
        <Problem happened={readFailure(work.error).message} onRetry={() => void work.refetch()} retrying={work.isFetching} />
      ) : null}
      {work.isPending ? <Skeleton lines={6} label={words('loading')} /> : null}
      {work.data && work.open.length + work.closed.length === 0 ? <Empty title={words('none')}>{words('noneYet')}</Empty> : null}
      {work.left.map(({ visitId, siteLabel }) => (
        <Notice
          key={visitId}
          kind="mind"
          action={
            <LinkButton href={`/visits/${visitId}`} link={Link}>
              {words('leftOpen')}
            </LinkButton>
          }
        >
          {words('left', { site: siteLabel })}
        </Notice>
      ))}
      <ul className="border-t border-line">
        {work.open.map((visit) => (
          <WorkListLine key={visit.visitId} visit={visit} showCrew={showCrew} />
        ))}
      </ul>
      <WorkPart title={words('finished')} visits={work.closed} showCrew={showCrew} />
      <WorkPart title={words('tomorrow')} visits={work.tomorrow} showCrew={showCrew} />
      <WorkPart title={words('ahead')} visits={work.ahead} showCrew={showCrew} dayOf={(visit) => formatNearDay(visit.day, display)} />
      {/* Not before the list: it would push them away from under a finger. */}
      {work.isPending ? null : (
        <p className="mt-8 flex flex-wrap gap-x-6 border-t border-line pt-3">
          {[
            ['/which-tank', words('whichTank')],
            ['/whats-wrong', words('whatsWrong')],
          ].map(([href = '', label]) => (
            <Link key={href} href={href} className="inline-flex min-h-control items-center underline underline-offset-4">
              {label}
            </Link>
          ))}
        </p>
      )}
    </FieldFrame>
  )
}
