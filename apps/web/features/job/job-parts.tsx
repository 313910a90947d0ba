'use client'
import type { JobPage } from '@almanac/contract/jobs'
import { useDisplay } from '@almanac/ui/display'
import { TextLink } from '@almanac/ui/text-link'
import { formatClock, formatDuration } from '@almanac/units/format-clock'
import { formatDay, formatNearDay } from '@almanac/units/format-day'
import { type NumberDisplay, showWhole } from '@almanac/units/format-number'
import { useWords } from '@almanac/words/use-words'
import type { Words } from '@almanac/words/words'
import Link from 'next/link'

/** "2 h 40 min, eight of ten no longer than 3 h 10 min; from 42 of your visits and common practice; 3 not counted: …". */
export const usuallyWords = ({ middle, longer, visits, leftOut }: JobPage['usually'], words: Words<'job'>, display: NumberDisplay) =>
  [
    words('usuallyTakes', { middle: formatDuration(middle, display), longer: formatDuration(longer, display) }),
    visits === 0 ? words('practice') : words('fromVisits', { count: visits, shown: showWhole(visits, display) }),
    leftOut > 0 ? words('notCounted', { count: leftOut, shown: showWhole(leftOut, display) }) : '',
  ]
    .filter(Boolean)
    .join('; ')

/** The visit before, with its day. */
export function FollowsLink({ follows }: { follows: NonNullable<JobPage['follows']> }) {
  const display = useDisplay()
  const [words, kinds] = [useWords('job'), useWords('jobKind')]
  const gap = words('gap', { days: follows.leastDays })
  const job = () => (
    <TextLink href={`/jobs/${follows.jobId}`} link={Link}>
      {kinds(follows.kind)}
    </TextLink>
  )
  return follows.day
    ? words.rich('followsOf', { job, gap, day: formatDay(follows.day, display) })
    : words.rich('followsUndated', { job, gap })
}

/** When a visit is; for those who book, the way to its sheet. */
export function VisitTime({ visit, linked }: { visit: JobPage['visits'][number]; linked: boolean }) {
  const display = useDisplay()
  const when = `${formatNearDay(visit.day, display)} ${formatClock(visit.startsAt, display)}`
  if (!linked) return <span>{when}</span>
  return (
    <TextLink href={`/day-sheets?day=${visit.day}&sheet=${visit.crewDayId}`} link={Link}>
      {when}
    </TextLink>
  )
}
