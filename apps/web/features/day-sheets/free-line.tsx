'use client'
import type { SheetFit } from '@almanac/contract/day-sheets'
import { jobKindWords } from '@almanac/records/job-kind'
import { Button } from '@almanac/ui/button'
import { useDisplay } from '@almanac/ui/display'
import { TextLink } from '@almanac/ui/text-link'
import { formatClock, formatClocks, formatDuration } from '@almanac/units/format-clock'
import type { NumberDisplay } from '@almanac/units/format-number'
import { useWords } from '@almanac/words/use-words'
import Link from 'next/link'
import { dueWords, weekRiskWords } from '@/client/job-words'
import { LineRow } from './line-row.tsx'
import type { Drag } from './use-drag.ts'

type LineDrag = ReturnType<Drag['source']>
type LineDrop = ReturnType<Drag['target']>

const driveWords = (minutes: number | null, display: NumberDisplay) =>
  minutes === null ? 'drive unknown' : minutes === 0 ? 'no extra driving' : `+${formatDuration(minutes, display)} driving`

/** A free stretch of the sheet. */
export function FreeLine({ from, until, minutes, drop }: { from: number; until: number; minutes: number; drop: LineDrop }) {
  const display = useDisplay()
  const clock = (ms: number) => formatClock(ms, display)
  return (
    <LineRow time={clock(from)} rail="free" hand={drop}>
      <span className="text-small">
        {formatDuration(minutes, display)} not booked, until {clock(until)}
      </span>
    </LineRow>
  )
}

export type FitLineProps = { fit: SheetFit; day: string; busy: boolean; drag: LineDrag; onPlace: () => void }

/** A job that would fit here: faint, with what waiting costs, and one press to take it. */
export function FitLine({ fit, day, busy, drag, onPlace }: FitLineProps) {
  const display = useDisplay()
  const speaking = { words: useWords('job'), display }
  const name = `${jobKindWords[fit.kind]} · ${fit.siteLabel}`
  const words = [
    fit.town,
    dueWords(fit.dueEarliest, fit.dueLatest, day, speaking),
    weekRiskWords(fit.kind, fit.chance3Months, speaking),
    driveWords(fit.addedDriveMinutes, display),
  ]
  const times = formatClocks(fit.startsAt, fit.endsAt, display)
  return (
    <LineRow
      rail="fit"
      hand={drag}
      note={<span className="max-lg:hidden">fits {times}</span>}
      length={formatDuration(fit.minutes, display)}
      actions={
        <Button data-line onClick={onPlace} busy={busy} aria-label={`Book ${name} at ${formatClock(fit.startsAt, display)}`}>
          Book
        </Button>
      }
    >
      <span className="text-water">
        <span aria-hidden="true">+ </span>
        <TextLink href={`/jobs/${fit.jobId}`} link={Link}>
          {name}
        </TextLink>
      </span>
      <span className="block text-small text-soft">
        {words.filter(Boolean).join(' · ')}
        <span className="lg:hidden"> · fits {times}</span>
      </span>
    </LineRow>
  )
}
