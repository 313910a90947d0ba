'use client'
import { useDisplay } from '@almanac/ui/display'
import { Empty } from '@almanac/ui/empty'
import { FieldFrame } from '@almanac/ui/field-frame'
import { PageHead } from '@almanac/ui/page-head'
import { Problem } from '@almanac/ui/problem'
import { Skeleton } from '@almanac/ui/skeleton'
import { formatDayTitle, formatNearDay } from '@almanac/units/format-day'
import { useWords } from '@almanac/words/use-words'
import { useQuery } from '@tanstack/react-query'
import Link from 'next/link'
import { useEffect, useRef } from 'react'
import { readFailure } from '@/client/failure'
import { FieldTools } from '@/client/field-tools'
import { useSession } from '@/client/providers'
import { useToday } from '@/client/use-today'
import { WorkListLine } from './work-line.tsx'

/** The technician's day: one column, the next visit first. */
export function Today() {
  const display = useDisplay()
  const { api } = useSession()
  const words = useWords('today')
  const today = useToday()
  // The day is the server's; the device's clock only says when to ask for it again.
  const work = useQuery(api.visits.today.queryOptions({ input: {} }))
  const { refetch } = work
  const asked = useRef(today)
  useEffect(() => {
    if (asked.current === today) return
    asked.current = today
    void refetch()
  }, [today, refetch])
  const page = work.data
  const open = page?.visits.filter((visit) => visit.state !== 'closed') ?? []
  const closed = page?.visits.filter((visit) => visit.state === 'closed') ?? []
  return (
    <FieldFrame title={words('title')} tools={<FieldTools />}>
      <PageHead title={formatDayTitle(page?.day ?? today, today, display)} lead={page && !page.mine ? words('allCrews') : undefined} />
      {work.error ? (
        <Problem happened={readFailure(work.error).message} onRetry={() => void work.refetch()} retrying={work.isFetching} />
      ) : null}
      {work.isPending ? <Skeleton lines={6} label={words('loading')} /> : null}
      {page && page.visits.length === 0 ? <Empty title={words('none')}>{words('noneYet')}</Empty> : null}
      <ul className="border-t border-line">
        {open.map((visit) => (
          <WorkListLine key={visit.visitId} visit={visit} showCrew={!page?.mine} />
        ))}
      </ul>
      {closed.length > 0 ? (
        <>
          <h2 className="mt-8 mb-2 text-h2 font-semibold">{words('finished')}</h2>
          <ul className="border-t border-line">
            {closed.map((visit) => (
              <WorkListLine key={visit.visitId} visit={visit} showCrew={!page?.mine} />
            ))}
          </ul>
        </>
      ) : null}
      {page && page.next.length > 0 ? (
        <>
          <h2 className="mt-8 mb-2 text-h2 font-semibold">{words('ahead')}</h2>
          <ul className="border-t border-line">
            {page.next.slice(0, 20).map((visit) => (
              <WorkListLine key={visit.visitId} visit={visit} showCrew={!page.mine} day={formatNearDay(visit.day, display)} />
            ))}
          </ul>
        </>
      ) : null}
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
