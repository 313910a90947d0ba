import * as z from 'zod'
import { Day, Id } from './shared.ts'

const bed = { bedId: Id, tank: z.string() }
const dated = { key: z.string(), day: Day }

/** One dated thing that happened at a site, newest first. The screen finds the words. */
export const SiteHappening = z.discriminatedUnion('type', [
  z.object({
    ...dated,
    ...bed,
    type: z.literal('bed-began'),
    earliestDay: Day.nullable(),
    asWritten: z.string().nullable(),
    resinKind: z.string(),
    volumeFt3: z.number().nullable(),
  }),
  z.object({ ...dated, ...bed, type: z.literal('bed-ended'), earliestDay: Day.nullable(), cause: z.string() }),
  z.object({
    ...dated,
    ...bed,
    type: z.literal('inspection'),
    beadCondition: z.string().nullable(),
    capacityShare: z.number().nullable(),
    moistureShare: z.number().nullable(),
    pressureDropPsi: z.number().nullable(),
    notes: z.string().nullable(),
  }),
  z.object({
    ...dated,
    type: z.literal('water-test'),
    point: z.string(),
    hardnessGpg: z.number().nullable(),
    freeChlorineMgL: z.number().nullable(),
    totalChlorineMgL: z.number().nullable(),
    ironMgL: z.number().nullable(),
    source: z.string(),
  }),
  z.object({
    ...dated,
    type: z.literal('visit'),
    jobId: Id,
    kind: z.string(),
    state: z.string(),
    outcome: z.string().nullable(),
    crew: z.string(),
    notes: z.string().nullable(),
  }),
  z.object({ ...dated, type: z.literal('job'), jobId: Id, kind: z.string(), state: z.string(), reason: z.string().nullable() }),
  z.object({
    ...dated,
    ...bed,
    type: z.literal('forecast'),
    fromDue50: Day.nullable(),
    toDue50: Day.nullable(),
    cause: z.string(),
  }),
  z.object({
    ...dated,
    type: z.literal('supply'),
    supply: z.string(),
    disinfectant: z.string(),
    residualMgL: z.number().nullable(),
    source: z.string(),
  }),
  z.object({ ...dated, type: z.literal('tenure'), customerName: z.string(), began: z.boolean() }),
])
export type SiteHappening = z.infer<typeof SiteHappening>
