import { dayHalves } from '@almanac/records/day-plan'
import * as z from 'zod'
import { ClockTime, Day, Id, Instant } from './shared.ts'

/** Which places are wanted: of one day, before or after noon, with one crew. Left out: any. */
export const PlacesAsked = z.object({
  jobId: Id,
  day: Day.optional(),
  half: z.enum(dayHalves).optional(),
  crewName: z.string().max(80).optional(),
})
export type PlacesAsked = z.infer<typeof PlacesAsked>

/** Places for a job on the day sheets, cheapest first, and the sheets where it does not fit, each with its reason and what would free one. */
export const JobPlaces = z.object({
  fromDay: Day,
  untilDay: Day,
  /** The days that have sheets, and the crews on them: what can be asked for. */
  days: z.array(Day),
  crews: z.array(z.string()),
  places: z.array(
    z.object({
      crewDayId: Id,
      day: Day,
      crewName: z.string(),
      people: z.array(z.string()),
      at: ClockTime,
      /** The last time at which it could begin in the same gap, its drives counted. */
      lastAt: ClockTime,
      startsAt: Instant,
      endsAt: Instant,
      /** Minutes of driving it adds to the crew's day; null where a place is not known. */
      addedDriveMinutes: z.number().nullable(),
      /** What else it costs: overtime, days past its window. */
      words: z.string().nullable(),
    }),
  ),
  unfit: z.array(z.object({ crewDayId: Id, day: Day, crewName: z.string(), reason: z.string() })),
})
export type JobPlaces = z.infer<typeof JobPlaces>
