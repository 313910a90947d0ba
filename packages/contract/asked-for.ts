import { type AskedFor as AskedForOfRecord, kitWays } from '@almanac/records/asked-for'
import { callComplaints } from '@almanac/records/call'
import { procedureSteps } from '@almanac/records/procedure-step'
import { visitStops } from '@almanac/records/visit-stop'
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
  z.object({
    by: z.literal('guide'),
    step: z.enum(procedureSteps).nullable(),
    stop: z.enum(visitStops).nullable(),
    aroundIn: z.number().nullable(),
    heightIn: z.number().nullable(),
    photographs: z.number().int(),
  }),
  z.object({ by: z.literal('kit'), way: z.enum(kitWays) }),
]) satisfies z.ZodType<AskedForOfRecord>
