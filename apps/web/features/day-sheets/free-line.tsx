'use client'
import type { SheetFit } from '@almanac/contract/day-sheets'
import { jobKindWords } from '@almanac/records/job-kind'
import { Button } from '@almanac/ui/button'
import { useDisplay } from '@almanac/ui/display'
import { TextLink } from '@almanac/ui/text-link'
import Link from 'next/link'
import { clockIn, durationWords } from '@/client/clock-words'
import { dueWords, weekRiskWords } from '@/client/job-words'
import { useSession } from '@/client/providers'
import { LineRow } from './line-row.tsx'
import type { Drag } from './use-drag.ts'

type LineDrag = ReturnType<Drag['source']>
type LineDrop = ReturnType<Drag['target']>

const driveWords = (minutes: number | null) =>
  minutes === null ? 'drive unknown' : minutes === 0 ? 'no more driving' : `+${durationWords(minutes)} driving`

/** A free stretch of the sheet. */
export function FreeLine({ from, until, minutes, drop }: { from: number; until: number; minutes: number; drop: LineDrop }) {
  const { me } = useSession()
  const clock = (ms: number) => clockIn(me.company.timeZone, new Date(ms).toISOString())
  return (
    <LineRow time={clock(from)} rail="free" hand={drop}>
      <span className="text-small">
        {durationWords(minutes)} free until {clock(until)}
      </span>
    </LineRow>
  )
}

export type FitLineProps = { fit: SheetFit; day: string; busy: boolean; drag: LineDrag; onPlace: () => void }

/** A job that would fit here: faint, with what waiting costs, and one press to take it. */
export function FitLine({ fit, day, busy, drag, onPlace }: FitLineProps) {
  const display = useDisplay()
  const { me } = useSession()
  const { timeZone } = me.company
  const name = `${jobKindWords[fit.kind]} · ${fit.siteLabel}`
  const words = [
    fit.town,
    dueWords(fit.dueEarliest, fit.dueLatest, day),
    weekRiskWords(fit.kind, fit.chance3Months, display),
    driveWords(fit.addedDriveMinutes),
  ]
  const times = `${clockIn(timeZone, fit.startsAt)}–${clockIn(timeZone, fit.endsAt)}`
  return (
    <LineRow
      rail="fit"
      hand={drag}
      note={<span className="max-lg:hidden">fits {times}</span>}
      length={durationWords(fit.minutes)}
      actions={
        <Button data-line onClick={onPlace} busy={busy} aria-label={`Place ${name} at ${clockIn(timeZone, fit.startsAt)}`}>
          Place
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
