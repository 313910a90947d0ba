import { beadConditions } from '@almanac/records/bead-condition'
import { recordedDisinfectants } from '@almanac/records/disinfectant'
import { endCauses } from '@almanac/records/end-cause'
import { jobKinds } from '@almanac/records/job-kind'
import { jobStates } from '@almanac/records/job-state'
import { measuringPoints } from '@almanac/records/measuring-point'
import { recordedResinKinds } from '@almanac/records/resin-kind'
import { visitOutcomes } from '@almanac/records/visit-outcome'
import { visitStates } from '@almanac/records/visit-state'
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
    resinKind: z.enum(recordedResinKinds),
    volumeFt3: z.number().nullable(),
  }),
  z.object({ ...dated, ...bed, type: z.literal('bed-ended'), earliestDay: Day.nullable(), cause: z.enum(endCauses) }),
  z.object({
    ...dated,
    ...bed,
    type: z.literal('inspection'),
    beadCondition: z.enum(beadConditions).nullable(),
    capacityShare: z.number().nullable(),
    moistureShare: z.number().nullable(),
    pressureDropPsi: z.number().nullable(),
    notes: z.string().nullable(),
  }),
  z.object({
    ...dated,
    type: z.literal('water-test'),
    point: z.enum(measuringPoints),
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
    kind: z.enum(jobKinds),
    state: z.enum(visitStates),
    outcome: z.enum(visitOutcomes).nullable(),
    crew: z.string(),
    notes: z.string().nullable(),
  }),
  z.object({
    ...dated,
    type: z.literal('job'),
    jobId: Id,
    kind: z.enum(jobKinds),
    state: z.enum(jobStates),
    reason: z.string().nullable(),
  }),
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
    disinfectant: z.enum(recordedDisinfectants),
    residualMgL: z.number().nullable(),
    source: z.string(),
  }),
  z.object({ ...dated, type: z.literal('tenure'), customerName: z.string(), began: z.boolean() }),
])
export type SiteHappening = z.infer<typeof SiteHappening>
