'use client'
import type { DaySheet, SheetVisit } from '@almanac/contract/day-sheets'
import type { Expected } from '@almanac/service-rules/day-sheets/day-now'
import { useDisplay } from '@almanac/ui/display'
import { StatusWord } from '@almanac/ui/status-word'
import { TextLink } from '@almanac/ui/text-link'
import { formatClock, formatDuration } from '@almanac/units/format-clock'
import Link from 'next/link'
import { jobName } from '@/client/job-words'
import { WhomLine } from '@/client/whom-line'
import { nowWords } from './now-words.ts'
import { expectedOf } from './use-expected.ts'

type Hit = { sheet: DaySheet; visit: SheetVisit; expected: Expected }

/** Whoever was promised another time is called first. */
const rank = ({ expected }: Hit) => (expected.missed ? 0 : 1)

/** Who is over or late now, and who comes later by it: promised customers first, each with the number to call. Nothing where the day goes as planned. */
export function DayNow({ sheets, nowMs }: { sheets: readonly DaySheet[]; nowMs: number }) {
  const display = useDisplay()
  const hits: Hit[] = sheets.flatMap((sheet) => {
    const expected = expectedOf(sheet, nowMs)
    return sheet.visits.flatMap((visit) => {
      const one = expected.get(visit.id)
      return one && (one.over || one.lateMinutes > 0 || one.missed) ? [{ sheet, visit, expected: one }] : []
    })
  })
  if (hits.length === 0) return null
  const toCall = hits.filter(({ expected }) => !expected.over).sort((a, b) => rank(a) - rank(b) || a.expected.startMs - b.expected.startMs)
  const over = hits.filter(({ expected }) => expected.over)
  return (
    <section aria-label="Now" className="mb-5 border-t border-danger pt-3 print:hidden">
      <h2 className="mb-1 font-semibold">
        Now, {formatClock(nowMs, display)}:{' '}
        {toCall.length === 0 ? 'a visit runs over' : toCall.length === 1 ? 'one customer to call' : `${toCall.length} customers to call`}
      </h2>
      <ul>
        {over.map(({ sheet, visit, expected }) => (
          <li key={visit.id} className="py-1">
            <StatusWord shape="triangle" tone="danger">
              {sheet.name}: {nowWords(visit, expected, display)}
            </StatusWord>{' '}
            {jobName(visit)}
          </li>
        ))}
        {toCall.map(({ sheet, visit, expected }) => (
          <li key={visit.id} className="flex flex-wrap items-baseline gap-x-4 gap-y-2 border-b border-line py-1.5">
            <TextLink href={`/jobs/${visit.jobId}`} link={Link} strong>
              {jobName(visit)}
            </TextLink>
            <WhomLine whom={visit.whom} />
            <span className={expected.missed ? 'text-danger' : 'text-soft'}>
              {sheet.name}, about {formatClock(expected.startMs, display)} instead of {formatClock(visit.startsAt, display)}
              {expected.missed && visit.arriveUntil
                ? `: ${formatDuration(Math.max(1, Math.round((expected.startMs - Date.parse(visit.arriveUntil)) / 60_000)), display)} past the promise`
                : ''}
            </span>
          </li>
        ))}
      </ul>
    </section>
  )
}
