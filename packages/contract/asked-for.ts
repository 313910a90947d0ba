import { callComplaints } from '@almanac/records/call'
import * as z from 'zod'
import { Day } from './shared.ts'

/** How a job was asked for, as the app wrote it down itself: screens and papers find the words. What people say in their own words is the job's note. */
export const AskedFor = z.discriminatedUnion('by', [
  /** By the link in a reminder, with the days that suit as the customer typed them. */
  z.object({ by: z.literal('link'), days: z.string() }),
  /** On a call: a look and a quote, a complaint after a rebed, what the caller sees, since when their water is hard. */
  z.object({
    by: z.literal('call'),
    quote: z.boolean(),
    rebedDay: Day.nullable(),
    sees: z.enum(callComplaints).nullable(),
    hard: z.object({ earliest: Day, latest: Day }).nullable(),
  }),
])
export type AskedFor = z.infer<typeof AskedFor>
