import type { AskedFor as AskedForOfRecord } from '@almanac/records/asked-for'
import { callComplaints } from '@almanac/records/call'
import * as z from 'zod'
import { Day } from './shared.ts'

/** How a job was asked for. */
export const AskedFor = z.discriminatedUnion('by', [
  z.object({ by: z.literal('link'), days: z.string() }),
  z.object({
    by: z.literal('call'),
    quote: z.boolean(),
    rebedDay: Day.nullable(),
    sees: z.enum(callComplaints).nullable(),
    hard: z.object({ earliest: Day, latest: Day }).nullable(),
  }),
]) satisfies z.ZodType<AskedForOfRecord>
