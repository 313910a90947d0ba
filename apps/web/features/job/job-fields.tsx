'use client'
import { DayInput } from '@almanac/ui/day-input'
import { useDisplay } from '@almanac/ui/display'
import { Select } from '@almanac/ui/select'
import { readNumber } from '@almanac/units/read-number'
import { lengthChoices, peopleChoices } from '@/client/job-lengths'
import type { useFields } from '@/client/use-fields'

/** What is typed of a job, blank where nothing was said. */
export type JobTexts = { minutes: string; people: string; vehicle: string; earliest: string; latest: string; notes: string }

const VEHICLES = [
  { value: 'yes', label: 'yes' },
  { value: 'no', label: 'no' },
]

/** Length, people, vehicle and days of a job. `usual`: a blank length or number of people follows from kind and tank. */
export function JobFields({
  field,
  usual,
  minutes,
  today,
}: {
  field: ReturnType<typeof useFields<JobTexts>>['field']
  usual: boolean
  minutes: number | null
  today: string
}) {
  const display = useDisplay()
  const none = usual ? 'as usual for it' : undefined
  return (
    <>
      <Select label="Length on site" {...field('minutes')} none={none} choices={lengthChoices(minutes, display)} />
      <Select label="People" {...field('people')} none={none} choices={peopleChoices} />
      <Select label="Needs a vehicle" {...field('vehicle')} none="as usual for its kind" choices={VEHICLES} />
      <DayInput label="Not before" {...field('earliest')} min={usual ? today : undefined} />
      <DayInput
        label="To be done by"
        hint={usual ? 'Leave blank if it’s open; a rebed uses the bed’s due window' : undefined}
        {...field('latest')}
        min={usual ? today : undefined}
      />
    </>
  )
}

/** What the fields say: null where they are blank. */
export function readJobFields({ minutes, people, vehicle, earliest, latest, notes }: JobTexts) {
  return {
    ...{ minutes: readNumber(minutes), crewSize: readNumber(people), needsVehicle: vehicle === '' ? null : vehicle === 'yes' },
    ...{ dueEarliest: earliest || null, dueLatest: latest || null, notes: notes.trim() || null },
  }
}
