import { followUpKinds } from '@almanac/records/beside-visit'
import { contactRoles } from '@almanac/records/contact-role'
import type { EmptiedTank as EmptiedTankRecord } from '@almanac/records/emptied-tank'
import { endCauses } from '@almanac/records/end-cause'
import { jobKinds } from '@almanac/records/job-kind'
import { measurementKinds } from '@almanac/records/measurement-kind'
import { measuringPoints } from '@almanac/records/measuring-point'
import { gravelsFound, tankConditions } from '@almanac/records/procedure-ask'
import { resinKinds } from '@almanac/records/resin-kind'
import { supplyKinds } from '@almanac/records/supply-kind'
import { visitOutcomes } from '@almanac/records/visit-outcome'
import { visitStates } from '@almanac/records/visit-state'
import { oc } from '@orpc/contract'
import * as z from 'zod'
import { AskedFor } from './asked-for.ts'
import { BedRecord, TwinTank } from './bed-record.ts'
import { command, Day, Entered, Id, Instant, Version, Why } from './shared.ts'
import { SoftenerSettings } from './softeners.ts'

/** One line of today's work. */
export const WorkLine = z.object({
  visitId: Id,
  state: z.enum(visitStates),
  startsAt: Instant,
  endsAt: Instant,
  day: Day,
  kind: z.enum(jobKinds),
  siteLabel: z.string(),
  street: z.string().nullable(),
  town: z.string().nullable(),
  crewName: z.string(),
  people: z.array(z.string()),
  bed: BedRecord.nullable(),
})
export type WorkLine = z.infer<typeof WorkLine>

const EmptiedTank = z.object({
  day: Day,
  found: z.string().nullable(),
  tubeIn: z.number().nullable(),
  gravel: z.enum(gravelsFound).nullable(),
  condition: z.enum(tankConditions).nullable(),
}) satisfies z.ZodType<EmptiedTankRecord>

/** What a visit needs on the tablet: where, who, what, and the facts that kit, drawing and procedure are built from. */
export const VisitPage = WorkLine.extend({
  version: Version,
  jobId: Id,
  siteId: Id,
  accessNotes: z.string().nullable(),
  jobNotes: z.string().nullable(),
  askedFor: AskedFor.nullable(),
  /** Whether the person who asks is on the crew; null for one who is on no day sheet. */
  yours: z.boolean().nullable(),
  /** The last visits to the site, the latest first, with what was written down for the next time. */
  before: z.array(z.object({ day: Day, kind: z.enum(jobKinds), outcome: z.enum(visitOutcomes).nullable(), notes: z.string().nullable() })),
  /** The last tests there, the latest first. */
  tests: z.array(z.object({ day: Day, point: z.enum(measuringPoints), hardnessGpg: z.number().nullable() })),
  contacts: z.array(z.object({ name: z.string().nullable(), role: z.enum(contactRoles), phone: z.string().nullable() })),
  softenerLabel: z.string().nullable(),
  twin: TwinTank.nullable(),
  /** Where an earlier visit of the job took the bed out and left the tank without one. */
  emptied: EmptiedTank.nullable(),
  water: z.object({ source: z.enum(supplyKinds).nullable(), ironMgL: z.number().nullable(), temperatureC: z.number().nullable() }),
  /** What its settings are worked out from, on the tablet too; null where the visit is for no softener on record. */
  settings: SoftenerSettings.nullable(),
  /** What the customer asked for and the crew brings: it counts as handed over once the visit is done. */
  materials: z.array(z.object({ name: z.string(), unit: z.string(), quantity: z.number() })),
  stock: z.array(
    z.object({
      id: Id,
      name: z.string(),
      kind: z.string(),
      unit: z.string(),
      resinKind: z.string().nullable(),
      bagFt3: z.number().nullable(),
      tubeOdIn: z.number().nullable(),
      onHand: z.number(),
    }),
  ),
  outcome: z.enum(visitOutcomes).nullable(),
  closedAt: Instant.nullable(),
})
export type VisitPage = z.infer<typeof VisitPage>

const text = (most: number) => z.string().max(most)

/** The record that finishes a visit; what it must hold for each outcome is decided by the service rules, on the tablet and here alike. */
export const CloseOutInput = z.object({
  visitId: Id,
  jobKind: z.enum(jobKinds),
  outcome: z.enum(visitOutcomes),
  workDay: Day,
  startedAt: Instant,
  finishedAt: Instant,
  checks: z
    .array(z.object({ stepId: text(60), confirmed: z.boolean(), confirmedAt: Instant.optional(), note: text(500).optional() }))
    .max(200),
  measurements: z
    .array(
      z.object({
        kind: z.enum(measurementKinds),
        value: z.number(),
        enteredValue: z.number(),
        enteredUnit: text(20),
        why: Entered.shape.why,
      }),
    )
    .max(50),
  partsUsed: z
    .array(z.object({ stockItemId: Id.nullable(), name: text(200), quantity: z.number(), unit: text(40), why: Entered.shape.why }))
    .max(100),
  oldBed: z.object({ takenOut: z.boolean(), endCause: z.enum(endCauses).nullable(), evidence: text(500) }).nullable(),
  newBed: z
    .object({
      resinKind: z.enum(resinKinds),
      volumeFt3: z.number(),
      enteredVolume: z.object({ value: z.number(), unit: z.enum(['ft3', 'L']) }),
      gravelLb: z.number(),
      tubeCutIn: z.number().nullable(),
      why: Why,
    })
    .nullable(),
  reason: text(2000),
  hardnessReason: text(500),
  notes: text(4000),
  /** Left out by tablets of the releases before. */
  beside: z
    .object({
      others: text(200),
      followUp: z.object({ kind: z.enum(followUpKinds), what: text(500) }).nullable(),
      extra: z.object({ what: text(1000), agreedWith: text(120) }).nullable(),
    })
    .optional(),
})
export type CloseOutInput = z.infer<typeof CloseOutInput>

export const StartVisitInput = command({ visitId: Id, version: Version })
export type StartVisitInput = z.infer<typeof StartVisitInput>
export const CloseOutCommand = command({ record: CloseOutInput })
export type CloseOutCommand = z.infer<typeof CloseOutCommand>

export const visits = {
  today: oc
    .route({ method: 'GET', path: '/visits/today' })
    .input(z.object({ day: Day.optional() }))
    .output(z.object({ day: Day, mine: z.boolean(), visits: z.array(WorkLine), next: z.array(WorkLine) })),
  get: oc
    .route({ method: 'GET', path: '/visits/visit' })
    .input(z.object({ visitId: Id }))
    .output(VisitPage),
  start: oc
    .route({ method: 'POST', path: '/visits/start' })
    .input(StartVisitInput)
    .output(z.object({ visitId: Id, version: Version })),
  closeOut: oc
    .route({ method: 'POST', path: '/visits/close-out' })
    .input(CloseOutCommand)
    .output(z.object({ visitId: Id, jobState: z.string(), endedBedId: Id.nullable(), newBedId: Id.nullable() })),
}
