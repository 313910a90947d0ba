'use client'
import type { WeekOfTowns, WeekPlace } from '@almanac/contract/week'
import { Button } from '@almanac/ui/button'
import { useDisplay } from '@almanac/ui/display'
import { TextLink } from '@almanac/ui/text-link'
import { formatDuration } from '@almanac/units/format-clock'
import { formatNearDay } from '@almanac/units/format-day'
import Link from 'next/link'
import { useState } from 'react'
import { BookingAnswer } from '@/client/booking-answer'
import { jobName } from '@/client/job-words'
import { useBooking } from '@/client/use-booking'
import { BookHere } from './book-here.tsx'
import { byDriving, driveWords, peopleWords, startWords } from './week-words.ts'

const MOST_SHOWN = 6

/** The answer in words: the places with least driving in the town asked about, and the jobs that wait there. */
export function WeekAnswer({
  data,
  jobId,
  address,
}: {
  data: WeekOfTowns
  jobId: string | null
  address: (changes: Record<string, string>) => string
}) {
  const display = useDisplay()
  const desk = useBooking()
  const [taking, setTaking] = useState<WeekPlace | null>(null)
  const [inHand] = data.waiting.filter((job) => job.jobId === jobId)
  const town = data.towns.find((one) => one.town === data.town)
  if (!town) return null
  const best = byDriving(town.places).slice(0, MOST_SHOWN)
  return (
    <div className="mb-6 grid gap-x-12 gap-y-4 border-t border-ink pt-3 lg:grid-cols-2">
      <section aria-label="Places this week">
        <h2 className="mb-1 font-semibold">{inHand ? `Best places for ${jobName(inHand)}` : 'Best places'}</h2>
        <BookingAnswer desk={desk} />
        {town.driveMinutes === null ? (
          <p className="text-soft">
            {town.town} has no place on the map, so its drives aren’t known. Set the pin of one of its sites, or its ZIP code.
          </p>
        ) : best.length === 0 ? (
          <p className="text-soft">
            {data.sheets.length === 0 ? (
              <>
                No crew has a day sheet this week yet.{' '}
                <TextLink href={`/day-sheets?day=${data.days[0]}`} link={Link}>
                  Open the day sheets
                </TextLink>
              </>
            ) : (
              'No crew is near, free for that long and able to do it. Ask for less time or fewer people, or look at next week.'
            )}
          </p>
        ) : (
          <ul>
            {best.map((place) => (
              <li key={`${place.crewDayId} ${place.from}`} className="flex flex-wrap gap-x-4 py-1">
                <TextLink href={`/day-sheets?day=${place.day}&sheet=${place.crewDayId}`} link={Link} strong>
                  {startWords(place, display)}
                </TextLink>
                <span>{place.crewName}</span>
                <span className="grow text-soft">{driveWords(place)}</span>
                {data.waiting.length > 0 ? (
                  <Button onClick={() => setTaking(place)} aria-label={`Book ${startWords(place, display)}, ${place.crewName}`}>
                    Book
                  </Button>
                ) : null}
              </li>
            ))}
          </ul>
        )}
      </section>
      <section aria-label={`Waiting in ${town.town}`}>
        <h2 className="mb-1 font-semibold">Waiting in {town.town}</h2>
        {data.waiting.length === 0 ? <p className="text-soft">No job waits here for a day.</p> : null}
        <ul>
          {data.waiting.map((job) => (
            <li key={job.jobId} className="flex flex-wrap gap-x-4 gap-y-2 py-1.5">
              <TextLink href={`/jobs/${job.jobId}`} link={Link}>
                {jobName(job)}
              </TextLink>
              <span className="text-soft">
                {[
                  formatDuration(job.minutes, display),
                  peopleWords(job.people),
                  job.dueLatest ? `by ${formatNearDay(job.dueLatest, display)}` : null,
                ]
                  .filter(Boolean)
                  .join(', ')}
              </span>
              {job.jobId === jobId ? null : (
                <TextLink href={address({ job: job.jobId, town: '', kind: '', people: '', minutes: '' })} link={Link}>
                  Find its places
                </TextLink>
              )}
            </li>
          ))}
        </ul>
        {town.due > 0 ? (
          <p className="text-soft">
            {town.due === 1 ? 'One bed is' : `${town.due} beds are`} due within three months without a job.{' '}
            <TextLink href="/coming-due" link={Link}>
              Coming due
            </TextLink>
          </p>
        ) : null}
      </section>
      {taking ? (
        <BookHere
          place={taking}
          waiting={data.waiting}
          jobId={jobId}
          onClose={() => setTaking(null)}
          onBook={(job, booking) => {
            setTaking(null)
            desk.book({ ...booking, jobId: job.jobId, jobVersion: job.version, crewDayId: taking.crewDayId }, jobName(job))
          }}
        />
      ) : null}
    </div>
  )
}
