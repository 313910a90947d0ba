'use client'
import type { WeekOfTowns, WeekPlace } from '@almanac/contract/week'
import { Button } from '@almanac/ui/button'
import { Checkbox } from '@almanac/ui/checkbox'
import { Dialog } from '@almanac/ui/dialog'
import { useDisplay } from '@almanac/ui/display'
import { Select } from '@almanac/ui/select'
import { TimeInput } from '@almanac/ui/time-input'
import { clockOfMinute, minuteOfClock } from '@almanac/units/calendar/zone-clock'
import { useState } from 'react'
import { jobName } from '@/client/job-words'
import { useFields } from '@/client/use-fields'
import { startWords } from './week-words.ts'

type Waiting = WeekOfTowns['waiting'][number]
type Booking = { at: string; promise?: { from: string; until: string } }

/** What is promised by telephone where nobody says otherwise: from the visit's own hour for two hours. */
const WINDOW_MINUTES = 120
const LAST_MINUTE = 1439

type Props = {
  place: WeekPlace
  waiting: readonly Waiting[]
  jobId: string | null
  onClose: () => void
  onBook: (job: Waiting, booking: Booking) => void
}

/** Takes a place of the week for a waiting job, told to its customer or not. */
export function BookHere({ place, waiting, jobId, onClose, onBook }: Props) {
  const display = useDisplay()
  const [promises, setPromises] = useState(false)
  const { values, field } = useFields(() => ({
    jobId: waiting.find((one) => one.jobId === jobId)?.jobId ?? waiting[0]?.jobId ?? '',
    at: clockOfMinute(place.from),
    from: '',
    until: '',
  }))
  const job = waiting.find((one) => one.jobId === values.jobId)
  const from = values.from || values.at
  const usual = from ? clockOfMinute(Math.min(LAST_MINUTE, minuteOfClock(from) + WINDOW_MINUTES)) : ''
  const until = values.until || usual
  return (
    <Dialog open onClose={onClose} title={`Book ${startWords(place, display)}, ${place.crewName}`}>
      <form
        className="flex flex-col gap-4"
        onSubmit={(event) => {
          event.preventDefault()
          if (job && values.at) onBook(job, { at: values.at, ...(promises ? { promise: { from, until } } : {}) })
        }}
      >
        <Select label="Job" {...field('jobId')} choices={waiting.map((one) => ({ value: one.jobId, label: jobName(one) }))} />
        <TimeInput label="Begins at" {...field('at')} required />
        <Checkbox
          label="Promised to the customer"
          hint="Kept when plans change, or they go on the list to call."
          checked={promises}
          onChange={(event) => setPromises(event.target.checked)}
        />
        {promises ? (
          <div className="flex flex-wrap gap-4">
            <TimeInput label="From" {...field('from')} value={from} required />
            <TimeInput label="To" {...field('until')} value={until} required />
          </div>
        ) : null}
        <div className="flex justify-end gap-3">
          <Button onClick={onClose}>Cancel</Button>
          <Button kind="ink" type="submit" disabled={!job || !values.at}>
            {promises ? 'Book and promise' : 'Book'}
          </Button>
        </div>
      </form>
    </Dialog>
  )
}
