'use client'
import type { JobPage } from '@almanac/contract/jobs'
import { dayHalves } from '@almanac/records/day-plan'
import { jobKindWords } from '@almanac/records/job-kind'
import { Button } from '@almanac/ui/button'
import { useDisplay } from '@almanac/ui/display'
import { Problem } from '@almanac/ui/problem'
import { Section } from '@almanac/ui/section'
import { Select } from '@almanac/ui/select'
import { Skeleton } from '@almanac/ui/skeleton'
import { TextLink } from '@almanac/ui/text-link'
import { clockIn } from '@almanac/units/calendar/zone-clock'
import { formatClockTime, formatDuration } from '@almanac/units/format-clock'
import { formatNearDay } from '@almanac/units/format-day'
import type { NumberDisplay } from '@almanac/units/format-number'
import { keepPreviousData, useQuery } from '@tanstack/react-query'
import Link from 'next/link'
import { useState } from 'react'
import { BookingAnswer } from '@/client/booking-answer'
import { readFailure } from '@/client/failure'
import { type HandPlace, PlaceByHand } from '@/client/place-by-hand'
import { useSession } from '@/client/providers'
import { useBooking } from '@/client/use-booking'
import { useFields } from '@/client/use-fields'
import { useToday } from '@/client/use-today'

const SHOWN = 8

const HALVES = [
  { value: 'morning', label: 'Morning' },
  { value: 'afternoon', label: 'Afternoon' },
]

const driveWords = (minutes: number | null, display: NumberDisplay) =>
  minutes === null ? 'drive unknown' : minutes === 0 ? 'no extra driving' : `${formatDuration(minutes, display)} more driving`

/** Where the job would go over all sheets of the next ten working days, and why it does not go elsewhere. */
export function BestPlaces({ job }: { job: JobPage }) {
  const display = useDisplay()
  const { api, me } = useSession()
  const today = useToday()
  const desk = useBooking()
  const { values, field } = useFields(() => ({ day: '', half: '', crewName: '' }))
  const [byHand, setByHand] = useState<HandPlace | null>(null)
  const input = {
    ...{ jobId: job.id, day: values.day || undefined, crewName: values.crewName || undefined },
    half: dayHalves.find((one) => one === values.half),
  }
  const places = useQuery(api.jobs.places.queryOptions({ input, placeholderData: keepPreviousData }))
  if (places.error) return <Problem happened={readFailure(places.error).message} onRetry={() => void places.refetch()} />
  if (!places.data) return <Skeleton lines={5} label="Looking for open times" />
  const { places: found, unfit, days, crews } = places.data
  const reasons = Map.groupBy(unfit, (one) => one.reason)
  const label = `${jobKindWords[job.kind]} · ${job.siteLabel}`
  const booked = job.visits.find((visit) => visit.state === 'booked')
  const stood = booked && { day: booked.day, crewDayId: booked.crewDayId, at: clockIn(me.company.timeZone, booked.startsAt) }
  // A job that has its visit moves there; another visit of it is booked after a close-out that says "to return".
  const take = ({ crewDayId, at }: { crewDayId: string; at: string }) =>
    booked && stood
      ? desk.move({ visitId: booked.id, version: booked.version, crewDayId, at }, label, stood)
      : desk.book({ jobId: job.id, jobVersion: job.version, crewDayId, at }, label)
  return (
    <Section title="Best places">
      <BookingAnswer desk={desk} />
      <div className="mb-3 flex flex-wrap items-end gap-3">
        <Select
          label="Day"
          {...field('day')}
          none="any day"
          choices={days.map((day) => ({ value: day, label: formatNearDay(day, display) }))}
        />
        <Select label="Half" {...field('half')} none="any time" choices={HALVES} />
        <Select label="Crew" {...field('crewName')} none="any crew" choices={crews.map((name) => ({ value: name, label: name }))} />
        <Button onClick={() => setByHand(stood ?? found[0] ?? { day: values.day || today, crewDayId: '', at: '08:00' })}>
          Any other time
        </Button>
      </div>
      {found.length === 0 ? (
        <p>
          {values.day || values.half || values.crewName
            ? 'No room then. Choose another day, half or crew, or any other time.'
            : 'No sheet of the next ten working days has room for it.'}
        </p>
      ) : null}
      {booked ? null : (
        <p className="mb-2">
          <TextLink href={`/week?job=${job.id}`} link={Link}>
            Its week, town by town
          </TextLink>
        </p>
      )}
      <ul className="border-t border-line" aria-busy={places.isPlaceholderData}>
        {found.slice(0, SHOWN).map((place) => (
          <li
            key={`${place.crewDayId} ${place.at}`}
            className="flex flex-wrap items-center justify-between gap-x-4 gap-y-1 border-b border-line py-2"
          >
            <span>
              <span className="font-semibold">
                {formatNearDay(place.day, display)} {formatClockTime(place.at, display)}
              </span>
              {place.lastAt > place.at ? ` to ${formatClockTime(place.lastAt, display)}` : ''}, {place.crewName}
              <span className="block text-small text-soft">
                {[place.people.join(', '), driveWords(place.addedDriveMinutes, display), place.words].filter(Boolean).join('; ')}
              </span>
            </span>
            <span className="flex flex-wrap gap-2">
              {place.lastAt > place.at ? (
                <Button
                  kind="quiet"
                  onClick={() => setByHand({ day: place.day, crewDayId: place.crewDayId, at: place.at })}
                  aria-label={`Another start: ${formatNearDay(place.day, display)} ${formatClockTime(place.at, display)}, ${place.crewName}`}
                >
                  Another start
                </Button>
              ) : null}
              <Button
                busy={desk.busy}
                onClick={() => take(place)}
                aria-label={`${booked ? 'Move to' : 'Book'} ${formatNearDay(place.day, display)} ${formatClockTime(place.at, display)}, ${place.crewName}`}
              >
                {booked ? 'Move here' : 'Book'}
              </Button>
            </span>
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
      {byHand ? (
        <PlaceByHand
          title={`${booked ? 'Move' : 'Book'} ${label}`}
          sendLabel={booked ? 'Move' : 'Book'}
          minutes={job.minutes}
          start={byHand}
          mayStay={!booked}
          onClose={() => setByHand(null)}
          onSend={(place) => {
            setByHand(null)
            take(place)
          }}
        />
      ) : null}
    </Section>
  )
}
