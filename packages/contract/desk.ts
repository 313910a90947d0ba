import * as z from 'zod'
import { Day, Month } from './shared.ts'

const Band = z.object({ mean: z.number(), low: z.number(), high: z.number() })

/** A month of the owner's desk: rebeds to do and the hours of a crew of two that they take, against those that are left for them. */
const DeskMonth = z.object({
  month: Month,
  rebeds: Band,
  hours: Band,
  bookedHours: z.number(),
  crewHours: z.number(),
  /** Who is away on some of its days. */
  away: z.array(z.object({ name: z.string(), fromDay: Day, untilDay: Day.nullable() })),
})
export type DeskMonth = z.infer<typeof DeskMonth>

/** What the owner's page begins with: whom to call, how much work is ahead, and whether the crews can do it. */
export const Desk = z.object({
  /** Null before the first forecast has run. */
  asOfDay: Day.nullable(),
  /** Beds in service that have a due date. */
  beds: z.number().int(),
  /** Beds that have more likely failed than not, with no rebed under way: rows of the list to call. */
  toCall: z.number().int(),
  /** Of those, asked today without an answer, or told hard and not booked yet. */
  answered: z.number().int(),
  /** The calls that would tell most about next year's count, and by how many rebeds they would narrow its range; null where none would by one. */
  telling: z.object({ calls: z.number().int(), narrower: z.number() }).nullable(),
  /** Beds expected to have failed unseen that no rebed is under way for. */
  unseen: z.number(),
  /** Beds expected to fail in twelve months. */
  year: Band.nullable(),
  /** Hours of a crew of two for a usual rebed. */
  hoursEach: z.number(),
  /** Twelve, the present one first. */
  months: z.array(DeskMonth),
  /** Where the crews' hours are from: their shifts and days off, or the company's setting where nobody is on day sheets. */
  crewsFrom: z.enum(['shifts', 'setting']),
  /** Hours a month of a crew of two that go into work other than rebeds, by the last twelve months. */
  otherHours: z.number(),
  /** Past years in which fewer failed than the range said, or more, of so many; null where none were looked back on. */
  past: z.object({ years: z.number().int(), tooMany: z.number().int(), tooFew: z.number().int() }).nullable(),
})
export type Desk = z.infer<typeof Desk>
