import { jobKinds } from '@almanac/records/job-kind'
import { oc } from '@orpc/contract'
import * as z from 'zod'
import { Day, Id, Version } from './shared.ts'

/** Minutes since midnight on the company's clock. */
const Minute = z.number().int()

/** The question of the week: when can we be in this town, for this work? Without people or minutes, what such work usually takes. */
export const WeekAsked = z.object({
  /** Any day of the week asked for. */
  day: Day,
  town: z.string().max(200).optional(),
  /** A waiting job in hand: its town, kind, people and length are asked about where nothing else is said. */
  jobId: Id.optional(),
  kind: z.enum(jobKinds).optional(),
  people: z.coerce.number().int().min(1).max(6).optional(),
  minutes: z.coerce.number().int().min(10).max(600).optional(),
})
export type WeekAsked = z.infer<typeof WeekAsked>

/** A free stretch of a crew that reaches the town: its work may begin at any minute from `from` to `lastStart`, with the drives there and on. */
export const WeekPlace = z.object({
  crewDayId: Id,
  day: Day,
  crewName: z.string(),
  from: Minute,
  lastStart: Minute,
  addedDriveMinutes: z.number().int(),
})
export type WeekPlace = z.infer<typeof WeekPlace>

const Work = z.object({ from: Minute, until: Minute })
/** Only held for a customer who still chooses: we are not there. */
const Held = z.boolean()

export const WeekTown = z.object({
  town: z.string(),
  /** From the yard; null where no site of the town has a place on the map. */
  driveMinutes: z.number().int().nullable(),
  /** Jobs without a visit, and beds that come due within three months without a job. */
  waiting: z.number().int(),
  due: z.number().int(),
  /** When our crews are there. */
  visits: z.array(Work.extend({ day: Day, held: Held })),
  places: z.array(WeekPlace),
})
export type WeekTown = z.infer<typeof WeekTown>

export const WeekSheet = z.object({
  crewDayId: Id,
  day: Day,
  crewName: z.string(),
  people: z.array(z.string()),
  hours: Work,
  visits: z.array(Work.extend({ promised: Work.nullable(), held: Held })),
})
export type WeekSheet = z.infer<typeof WeekSheet>

export const WeekOfTowns = z.object({
  days: z.array(Day),
  today: Day,
  kind: z.enum(jobKinds),
  people: z.number().int(),
  minutes: z.number().int(),
  /** The town that was asked for, else the one with most waiting; null where there is none. */
  town: z.string().nullable(),
  /** In order of the drive from the yard. */
  towns: z.array(WeekTown),
  /** Towns with nothing waiting, due or booked, and those beyond what fits on a page: to choose from. */
  otherTowns: z.array(z.string()),
  sheets: z.array(WeekSheet),
  /** Jobs that wait in the town asked for, the most pressing first. */
  waiting: z.array(
    z.object({
      ...{ jobId: Id, version: Version, kind: z.enum(jobKinds), siteLabel: z.string(), dueLatest: Day.nullable() },
      ...{ minutes: z.number().int(), people: z.number().int() },
    }),
  ),
})
export type WeekOfTowns = z.infer<typeof WeekOfTowns>

export const week = {
  towns: oc.route({ method: 'GET', path: '/week/towns' }).input(WeekAsked).output(WeekOfTowns),
}
