import { arrangements, type TwinTank as TwinOfRecord } from '@almanac/records/arrangement'
import type { BedFacts } from '@almanac/records/bed-facts'
import { recordedResinKinds } from '@almanac/records/resin-kind'
import * as z from 'zod'
import { Id } from './shared.ts'

/** Which of a softener's several tanks. */
export const TwinTank = z.object({
  position: z.number().int().nullable(),
  of: z.number().int(),
  arrangement: z.enum(arrangements),
}) satisfies z.ZodType<TwinOfRecord>

/** A bed's record, as everything about its rebed is made from it. */
export const BedRecord = z.object({
  bedId: Id,
  resinKind: z.enum(recordedResinKinds),
  volumeFt3: z.number().nullable(),
  gravelLb: z.number().nullable(),
  tubeCutIn: z.number().nullable(),
  diameterIn: z.number().nullable(),
  heightIn: z.number().nullable(),
  nominalGrains: z.number().nullable(),
  sizeAsWritten: z.string().nullable(),
  tubeOdIn: z.number().nullable(),
  valveCardId: z.string().nullable(),
  backwashGpm: z.number().nullable(),
}) satisfies z.ZodType<BedFacts>
