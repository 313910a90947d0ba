'use client'
import type { JobPlaces } from '@almanac/contract/job-places'
import type { JobPage } from '@almanac/contract/jobs'
import { Button } from '@almanac/ui/button'
import { Checkbox } from '@almanac/ui/checkbox'
import { useDisplay } from '@almanac/ui/display'
import { Problem } from '@almanac/ui/problem'
import { Select } from '@almanac/ui/select'
import { Skeleton } from '@almanac/ui/skeleton'
import { formatClockTime } from '@almanac/units/format-clock'
import { formatNearDay } from '@almanac/units/format-day'
import { readNumber } from '@almanac/units/read-number'
import { useQuery } from '@tanstack/react-query'
import { type FormEvent, useState } from 'react'
import { readFailure } from '@/client/failure'
import { useSession } from '@/client/providers'
import { useCommand } from '@/client/use-command'
import { MOST_OFFERED, suggestTimes } from './suggest-times.ts'

type Place = JobPlaces['places'][number]

const HOUR_MS = 3_600_000
const SPARE_MS = 10 * 60_000

const keyOf = (place: Place) => `${place.crewDayId} ${place.at}`

const WINDOWS = [
  { value: '60', label: '1 hour' },
  { value: '120', label: '2 hours' },
  { value: '240', label: '4 hours' },
]
const HOLDS = [
  { value: '4', label: '4 hours' },
  { value: '24', label: 'a day' },
  { value: '48', label: 'two days' },
  { value: '120', label: 'five days' },
]

/** Choosing what to offer: three good times on different days are ticked already. */
export function ChooseTimes({ job, onClose }: { job: JobPage; onClose: () => void }) {
  const display = useDisplay()
  const { api } = useSession()
  const places = useQuery(api.jobs.places.queryOptions({ input: { jobId: job.id } }))
  const [ticked, setTicked] = useState<ReadonlySet<string> | null>(null)
  const [windowMinutes, setWindowMinutes] = useState('120')
  const [holdHours, setHoldHours] = useState('24')
  const [openedAt] = useState(() => Date.now())
  const offer = useCommand(api.windows.offer.mutationOptions(), { onDone: onClose })
  const failure = places.error ?? offer.error
  if (!places.data) return failure ? <Problem happened={readFailure(failure).message} /> : <Skeleton lines={4} label="Looking for times" />
  if (places.data.places.length === 0) return <p>No sheet of the next ten working days has room for this job. Open a day sheet first.</p>
  // Nobody can choose a time that is over before the choice is: such places are left out, with some minutes to fill in this form.
  const holdEnds = openedAt + (readNumber(holdHours) ?? 0) * HOUR_MS + SPARE_MS
  const found = places.data.places.filter((place) => Date.parse(place.startsAt) > holdEnds)
  const offered = new Set(found.map(keyOf))
  const chosen = ticked ? new Set([...ticked].filter((key) => offered.has(key))) : new Set(suggestTimes(found).map(keyOf))
  const tick = (key: string, on: boolean) => {
    const next = new Set(chosen)
    if (on) next.add(key)
    else next.delete(key)
    setTicked(next)
  }
  const submit = (event: FormEvent) => {
    event.preventDefault()
    offer.send({
      jobId: job.id,
      jobVersion: job.version,
      places: found.filter((place) => chosen.has(keyOf(place))).map(({ crewDayId, at }) => ({ crewDayId, at })),
      windowMinutes: readNumber(windowMinutes) ?? 0,
      holdHours: readNumber(holdHours) ?? 0,
    })
  }
  return (
    <form onSubmit={submit} className="flex flex-col gap-4">
      <fieldset>
        <legend className="mb-1 font-medium">Times to offer, {MOST_OFFERED} at most</legend>
        {found.length === 0 ? <p className="text-soft">None of these times is that far ahead. Hold them for a shorter time.</p> : null}
        {found.map((place) => (
          <Checkbox
            key={keyOf(place)}
            label={`${formatNearDay(place.day, display)} ${formatClockTime(place.at, display)}, ${place.crewName}`}
            checked={chosen.has(keyOf(place))}
            disabled={!chosen.has(keyOf(place)) && chosen.size >= MOST_OFFERED}
            onChange={(event) => tick(keyOf(place), event.target.checked)}
          />
        ))}
      </fieldset>
      <div className="grid gap-4 sm:grid-cols-2">
        <Select
          label="The crew may arrive within"
          choices={WINDOWS}
          value={windowMinutes}
          onChange={(event) => setWindowMinutes(event.target.value)}
        />
        <Select label="Hold the times for" choices={HOLDS} value={holdHours} onChange={(event) => setHoldHours(event.target.value)} />
      </div>
      {failure ? <Problem happened={readFailure(failure).message} /> : null}
      <div className="flex gap-3">
        <Button kind="ink" type="submit" busy={offer.isPending} disabled={chosen.size === 0}>
          Hold and create link
        </Button>
        <Button kind="quiet" onClick={onClose}>
          Leave it
        </Button>
      </div>
    </form>
  )
}
