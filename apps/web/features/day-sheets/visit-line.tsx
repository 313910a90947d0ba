'use client'
import type { SheetVisit } from '@almanac/contract/day-sheets'
import { jobKindWords } from '@almanac/records/job-kind'
import type { Expected } from '@almanac/service-rules/day-sheets/day-now'
import { Button } from '@almanac/ui/button'
import { JobStateWord } from '@almanac/ui/job-state-word'
import { StatusWord } from '@almanac/ui/status-word'
import { TextLink } from '@almanac/ui/text-link'
import { minutesBetween } from '@almanac/units/calendar/zone-clock'
import { formatClock, formatDuration } from '@almanac/units/format-clock'
import { useWords } from '@almanac/words/use-words'
import Link from 'next/link'
import { bedWords } from '@/client/bed-facts-words'
import { peopleWords } from '@/client/job-words'
import { useSession } from '@/client/providers'
import { useJobNote } from '@/client/use-job-note'
import { WhomLine } from '@/client/whom-line'
import { LineRow, type LineRowProps } from './line-row.tsx'
import { nowWords } from './now-words.ts'
import { SayUntil } from './say-until.tsx'
import { isPromiseLost } from './sheet-trouble.ts'

export type VisitLineProps = {
  visit: SheetVisit
  outside: boolean
  /** How it goes, where the day is today's. */
  expected: Expected | null
  busy: boolean
  drag: LineRowProps['hand']
  onMove: () => void
  onCallOff: () => void
}

/** A visit on the sheet: what, where, with whom, for how long; one that has not begun can be moved or called off. */
export function VisitLine({ visit, outside, expected, busy, drag, onMove, onCallOff }: VisitLineProps) {
  const { me } = useSession()
  const jobs = useWords('job')
  const note = useJobNote()(visit)
  const display = me.company
  const open = visit.state === 'booked'
  const name = `${jobKindWords[visit.kind]} · ${visit.siteLabel}`
  // Another time was taken all the same: the customer is on the list of whom to call.
  const lost = isPromiseLost(visit)
  const told =
    visit.arriveFrom && visit.arriveUntil
      ? `${lost ? 'promise not kept:' : visit.state === 'offered' ? 'offered' : 'promised'} ${formatClock(visit.arriveFrom, display)} to ${formatClock(visit.arriveUntil, display)}`
      : null
  const now = expected && nowWords(visit, expected, display)
  const isLate = expected !== null && (expected.over || expected.missed || expected.lateMinutes > 0)
  const facts = [told, visit.bed ? bedWords(visit.bed, display) : null, peopleWords(visit.crewSize, jobs), visit.town]
  const paper = [visit.street, visit.accessNotes, note].filter(Boolean)
  const length = formatDuration(minutesBetween(visit.startsAt, visit.endsAt), display)
  return (
    <LineRow
      time={formatClock(visit.startsAt, display)}
      rail={visit.state === 'closed' ? 'done' : 'visit'}
      hand={drag}
      note={
        outside ? (
          <span className="text-danger">outside the crew's hours</span>
        ) : note ? (
          <span className="line-clamp-2" title={note}>
            {note}
          </span>
        ) : null
      }
      length={length}
      actions={
        open ? (
          <>
            <Button data-line onClick={onMove} aria-label={`Move ${name}`}>
              Move
            </Button>
            <Button kind="quiet" onClick={onCallOff} busy={busy} aria-label={`Take off sheet: ${name}`}>
              Take off sheet
            </Button>
            {expected ? <SayUntil visit={visit} /> : null}
          </>
        ) : (
          <>
            <VisitEnd visit={visit} />
            {expected && visit.state === 'under-way' ? <SayUntil visit={visit} /> : null}
          </>
        )
      }
    >
      <TextLink href={`/jobs/${visit.jobId}`} link={Link} strong>
        {name}
      </TextLink>
      <span className="block text-small text-soft">
        {facts.filter(Boolean).join(', ')}
        <span className="lg:hidden">
          {' '}
          · {length}, until {formatClock(visit.endsAt, display)}
        </span>
      </span>
      <span className="block text-small">
        <WhomLine whom={visit.whom} />
      </span>
      {now ? (
        <span className="block text-small print:hidden">
          {isLate ? (
            <StatusWord shape="triangle" tone="danger">
              {now}
            </StatusWord>
          ) : (
            now
          )}
        </span>
      ) : null}
      {/* What a crew needs on paper; on the screen the job's page has it. */}
      {paper.length > 0 ? <span className="hidden text-small print:block">{paper.join(' · ')}</span> : null}
      {visit.warnings.map((words) => (
        <span key={words} className="block text-small">
          <StatusWord shape="triangle" tone="danger">
            {words}
          </StatusWord>
        </span>
      ))}
    </LineRow>
  )
}

/** How a visit ended where it did not go as planned, else how far it has come. */
function VisitEnd({ visit }: { visit: Pick<SheetVisit, 'outcome' | 'state'> }) {
  const outcomes = useWords('outcome')
  if (!visit.outcome || visit.outcome === 'done') return <JobStateWord state={visit.state} />
  return <StatusWord shape="hollow">{outcomes(visit.outcome)}</StatusWord>
}
