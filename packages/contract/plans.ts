import { planStates } from '@almanac/records/day-plan'
import { jobKinds } from '@almanac/records/job-kind'
import { oc } from '@orpc/contract'
import * as z from 'zod'
import { ClockTime, command, Day, Id, Instant, Version } from './shared.ts'

export const PlanAsked = z.discriminatedUnion('kind', [
  /** Plan the days ahead. */
  z.object({ kind: z.literal('week') }),
  /** A crew's day falls away. */
  z.object({ kind: z.literal('sheet-off'), crewDayId: Id }),
  /** Some of its people are missing. Plans of before they were named have nobody here. */
  z.object({ kind: z.literal('fewer-people'), crewDayId: Id, missingIds: z.array(Id).max(6).default([]) }),
  /** Its vehicle is broken: another one instead, or none. */
  z.object({ kind: z.literal('other-vehicle'), crewDayId: Id, vehicleId: Id.nullable() }),
  /** Who goes with whom on the first of the days: those who are on no sheet yet. */
  z.object({ kind: z.literal('crews') }),
])
export type PlanAsked = z.infer<typeof PlanAsked>

export const StartPlan = command({ fromDay: Day, days: z.number().int().min(1).max(10), asked: PlanAsked })
export type StartPlan = z.infer<typeof StartPlan>
/** Without any difference only the crew is changed, where people or the vehicle are missing. */
export const AcceptPlan = command({ planId: Id, version: Version, differenceIds: z.array(Id).max(500) })
export type AcceptPlan = z.infer<typeof AcceptPlan>
export const StopPlan = command({ planId: Id, version: Version })
export type StopPlan = z.infer<typeof StopPlan>

/** Opens sheets for some of the crews that a plan formed, by their place in its list. */
export const OpenCrews = command({ planId: Id, version: Version, crews: z.array(z.number().int().min(0).max(59)).min(1).max(60) })
export type OpenCrews = z.infer<typeof OpenCrews>

/** What a plan comes to, in what a dispatcher counts. */
export const PlanTotals = z.object({
  driveMinutes: z.number(),
  miles: z.number(),
  overtimeMinutes: z.number(),
  lateDays: z.number(),
  planned: z.number().int(),
  waiting: z.number().int(),
  /** How many days can be expected to end late; null where days are planned as long as usual. */
  lateEnds: z.number().nullable(),
})
export type PlanTotals = z.infer<typeof PlanTotals>

export const PlanDifference = z.object({
  id: Id,
  kind: z.enum(['place', 'move', 'time', 'take-off']),
  day: Day,
  /** On whose sheet: where it comes to stand, or is taken off. */
  crewDayId: Id.nullable(),
  crew: z.string(),
  sentence: z.string(),
})
export type PlanDifference = z.infer<typeof PlanDifference>

/** Who would go with whom, in what, from when to when, and what they could do that day. */
export const PlanCrew = z.object({
  people: z.array(z.object({ id: Id, name: z.string() })),
  vehicle: z.object({ id: Id, name: z.string() }),
  from: ClockTime,
  until: ClockTime,
  jobs: z.array(z.object({ jobId: Id, kind: z.enum(jobKinds), siteLabel: z.string(), town: z.string().nullable() })),
  /** Its sheet was opened from here. */
  opened: z.boolean(),
})
export type PlanCrew = z.infer<typeof PlanCrew>

export const PlanPage = z.object({
  id: Id,
  version: Version,
  asked: PlanAsked,
  fromDay: Day,
  untilDay: Day,
  state: z.enum(planStates),
  createdAt: Instant,
  failure: z.string().nullable(),
  before: PlanTotals.nullable(),
  after: PlanTotals.nullable(),
  /** What changes, in plain words; for a mishap how it can be met. */
  sentences: z.array(z.string()),
  /** What is still open. */
  differences: z.array(PlanDifference),
  /** How many of its changes were taken before. */
  taken: z.number().int(),
  /** Jobs that stay waiting, and why. */
  waiting: z.array(z.object({ jobId: Id, why: z.string() })),
  notes: z.array(z.string()),
  /** Only of a plan of who goes with whom. */
  crews: z.object({ formed: z.array(PlanCrew), spare: z.array(z.string()), tried: z.number().int() }).nullable(),
})
export type PlanPage = z.infer<typeof PlanPage>

export const plans = {
  start: oc
    .route({ method: 'POST', path: '/plans/start' })
    .input(StartPlan)
    .output(z.object({ planId: Id })),
  get: oc
    .route({ method: 'GET', path: '/plans/get' })
    .input(z.object({ planId: Id }))
    .output(PlanPage),
  stop: oc
    .route({ method: 'POST', path: '/plans/stop' })
    .input(StopPlan)
    .output(z.object({ planId: Id, version: Version })),
  /** Takes some or all of what a plan changes; all of it or nothing. */
  accept: oc
    .route({ method: 'POST', path: '/plans/accept' })
    .input(AcceptPlan)
    .output(z.object({ planId: Id, version: Version, changed: z.number().int() })),
  openCrews: oc
    .route({ method: 'POST', path: '/plans/open-crews' })
    .input(OpenCrews)
    .output(z.object({ planId: Id, version: Version, opened: z.array(Id) })),
}
