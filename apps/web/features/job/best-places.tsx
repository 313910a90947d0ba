'use client'
import type { JobPage } from '@almanac/contract/jobs'
import { jobKindWords } from '@almanac/records/job-kind'
import { Button } from '@almanac/ui/button'
import { useDisplay } from '@almanac/ui/display'
import { Problem } from '@almanac/ui/problem'
import { Section } from '@almanac/ui/section'
import { Skeleton } from '@almanac/ui/skeleton'
import { clockIn } from '@almanac/units/calendar/zone-clock'
import { formatClockTime, formatDuration } from '@almanac/units/format-clock'
import { formatNearDay } from '@almanac/units/format-day'
import type { NumberDisplay } from '@almanac/units/format-number'
import { useQuery } from '@tanstack/react-query'
import { BookingAnswer } from '@/client/booking-answer'
import { readFailure } from '@/client/failure'
import { useSession } from '@/client/providers'
import { useBooking } from '@/client/use-booking'

const SHOWN = 8

const driveWords = (minutes: number | null, display: NumberDisplay) =>
  minutes === null ? 'drive unknown' : minutes === 0 ? 'no extra driving' : `${formatDuration(minutes, display)} more driving`

/** Where the job would go over all sheets of the next ten working days, and why it does not go elsewhere. */
export function BestPlaces({ job }: { job: JobPage }) {
  const display = useDisplay()
  const { api, me } = useSession()
  const desk = useBooking()
  const places = useQuery(api.jobs.places.queryOptions({ input: { jobId: job.id } }))
  if (places.error) return <Problem happened={readFailure(places.error).message} onRetry={() => void places.refetch()} />
  if (!places.data) return <Skeleton lines={5} label="Looking for open times" />
  const { places: found, unfit } = places.data
  const reasons = Map.groupBy(unfit, (one) => one.reason)
  const label = `${jobKindWords[job.kind]} · ${job.siteLabel}`
  const booked = job.visits.find((visit) => visit.state === 'booked')
  // A job that has its visit moves there; another visit of it is booked after a close-out that says "to return".
  const take = ({ crewDayId, at }: { crewDayId: string; at: string }) =>
    booked
      ? desk.move({ visitId: booked.id, version: booked.version, crewDayId, at }, label, {
          crewDayId: booked.crewDayId,
          at: clockIn(me.company.timeZone, booked.startsAt),
        })
      : desk.book({ jobId: job.id, jobVersion: job.version, crewDayId, at }, label)
  return (
    <Section title="Best places">
      <BookingAnswer desk={desk} />
      {found.length === 0 ? <p>No sheet of the next ten working days has room for it.</p> : null}
      <ul className="border-t border-line">
        {found.slice(0, SHOWN).map((place) => (
          <li
            key={`${place.crewDayId} ${place.at}`}
            className="flex flex-wrap items-center justify-between gap-x-4 gap-y-1 border-b border-line py-2"
          >
            <span>
              <span className="font-semibold">
                {formatNearDay(place.day, display)} {formatClockTime(place.at, display)}
              </span>{' '}
              {place.crewName}
              <span className="block text-small text-soft">
                {[place.people.join(', '), driveWords(place.addedDriveMinutes, display), place.words].filter(Boolean).join('; ')}
              </span>
            </span>
            <Button
              busy={desk.busy}
              onClick={() => take(place)}
              aria-label={`${booked ? 'Move to' : 'Book'} ${formatNearDay(place.day, display)} ${formatClockTime(place.at, display)}, ${place.crewName}`}
            >
              {booked ? 'Move here' : 'Book'}
            </Button>
          </li>
        ))}
      </ul>
      {reasons.size > 0 ? (
        <details className="mt-3 text-small text-soft">
          <summary className="min-h-6">Sheets it doesn’t fit, and why</summary>
          <ul className="py-2">
            {[...reasons].map(([reason, all]) => (
              <li key={reason}>
                {all.length} × {reason}
              </li>
            ))}
          </ul>
        </details>
      ) : null}
    </Section>
  )
}
