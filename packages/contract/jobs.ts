import { agreementKinds } from '@almanac/records/agreement'
import { promiseWays } from '@almanac/records/call'
import { unusualReasons } from '@almanac/records/day-plan'
import { jobKinds } from '@almanac/records/job-kind'
import { jobStates } from '@almanac/records/job-state'
import { visitOutcomes } from '@almanac/records/visit-outcome'
import { visitStates } from '@almanac/records/visit-state'
import { oc } from '@orpc/contract'
import * as z from 'zod'
import { AskedFor } from './asked-for.ts'
import { BedRecord } from './bed-record.ts'
import { JobPlaces, PlacesAsked } from './job-places.ts'
import { ClockTime, command, Day, Id, Instant, Month, page, pageOf, Version } from './shared.ts'
import { WhomToCall } from './site-facts.ts'

const jobShape = {
  id: Id,
  version: Version,
  kind: z.enum(jobKinds),
  state: z.enum(jobStates),
  siteId: Id,
  siteLabel: z.string(),
  town: z.string().nullable(),
  bed: BedRecord.nullable(),
  dueEarliest: Day.nullable(),
  dueLatest: Day.nullable(),
  minutes: z.number(),
  crewSize: z.number(),
  /** Null: as its kind usually does. */
  needsVehicle: z.boolean().nullable(),
}

export const JobRow = z.object({
  ...jobShape,
  nextVisit: z.object({ startsAt: Instant, day: Day, crewName: z.string() }).nullable(),
  /** Chance of failure within 3 months, for beds with a forecast. */
  chance3Months: z.number().nullable(),
})
export type JobRow = z.infer<typeof JobRow>

const JobVisit = z.object({
  id: Id,
  version: Version,
  state: z.enum(visitStates),
  outcome: z.enum(visitOutcomes).nullable(),
  startsAt: Instant,
  endsAt: Instant,
  crewDayId: Id,
  day: Day,
  crewName: z.string(),
  people: z.array(z.string()),
  notes: z.string().nullable(),
  /** Work beyond the job, and with whom of the household it was agreed. */
  extra: z.object({ what: z.string(), agreedWith: z.string() }).nullable(),
  /** What the customer was promised, how, and by whom; null where nothing was. */
  promised: z.object({ from: Instant, until: Instant, by: z.enum(promiseWays), person: z.string().nullable() }).nullable(),
})

export const JobPage = z.object({
  ...jobShape,
  street: z.string().nullable(),
  whom: WhomToCall,
  accessNotes: z.string().nullable(),
  softenerId: Id.nullable(),
  softenerLabel: z.string().nullable(),
  notes: z.string().nullable(),
  askedFor: AskedFor.nullable(),
  stateReason: z.string().nullable(),
  /** Minutes that such visits take this firm: half of them, and eight of ten; learnt from so many, so many left out. */
  usually: z.object({ middle: z.number(), longer: z.number(), visits: z.number().int(), leftOut: z.number().int() }),
  createdAt: Instant,
  closedDay: Day.nullable(),
  /** The job it follows and that one's day, and the jobs that follow it. */
  follows: z.object({ jobId: Id, kind: z.enum(jobKinds), leastDays: z.number().int(), day: Day.nullable() }).nullable(),
  /** The agreement whose turn it is, and the day that was due. */
  turn: z.object({ kind: z.enum(agreementKinds), dueDay: Day }).nullable(),
  followedBy: z.array(z.object({ jobId: Id, kind: z.enum(jobKinds), leastDays: z.number().int() })),
  forecast: z
    .object({
      asOfDay: Day,
      due10Day: Day.nullable(),
      due50Day: Day.nullable(),
      due90Day: Day.nullable(),
      chance3Months: z.number().nullable(),
      chance12Months: z.number().nullable(),
      refusal: z.string().nullable(),
    })
    .nullable(),
  visits: z.array(JobVisit),
})
export type JobPage = z.infer<typeof JobPage>

const JobMoved = z.object({ jobId: Id, version: Version, state: z.enum(jobStates) })
const VisitPlaced = z.object({ visitId: Id, version: Version, jobId: Id, jobVersion: Version, startsAt: Instant, endsAt: Instant })

const ListJobs = page({
  state: z.enum(jobStates).default('proposed'),
  kind: z.enum(jobKinds).optional(),
  town: z.string().max(200).optional(),
})
export const ProposeJobs = command({
  beds: z
    .array(z.object({ bedId: Id }))
    .min(1)
    .max(500),
  kind: z.literal('rebed'),
})
export type ProposeJobs = z.infer<typeof ProposeJobs>
const Proposals = z.object({
  results: z.array(
    z.discriminatedUnion('status', [
      z.object({ bedId: Id, status: z.literal('proposed'), jobId: Id }),
      z.object({ bedId: Id, status: z.literal('refused'), reason: z.string(), jobId: Id.nullable() }),
    ]),
  ),
})
/** The rebeds that the plan shown gives to a month. */
export const ProposePlanned = command({ planId: Id, month: Month })
export type ProposePlanned = z.infer<typeof ProposePlanned>
const JobMinutes = z.number().int().min(5).max(1440)
const JobPeople = z.number().int().min(1).max(6)
export const ProposeJob = command({
  siteId: Id,
  softenerId: Id.optional(),
  bedId: Id.optional(),
  kind: z.enum(jobKinds),
  dueEarliest: Day.optional(),
  dueLatest: Day.optional(),
  minutes: JobMinutes.optional(),
  crewSize: JobPeople.optional(),
  needsVehicle: z.boolean().nullable().optional(),
  notes: z.string().max(4000).optional(),
  /** The job at the same site that it follows, by so many days at least. */
  after: z.object({ jobId: Id, leastDays: z.number().int().min(0).max(365) }).optional(),
})
export type ProposeJob = z.infer<typeof ProposeJob>
/** What a job asks for; a booked visit keeps its beginning, and lasts as long as is said here. */
export const ChangeJob = command({
  jobId: Id,
  version: Version,
  minutes: JobMinutes,
  crewSize: JobPeople,
  needsVehicle: z.boolean().nullable(),
  dueEarliest: Day.nullable(),
  dueLatest: Day.nullable(),
  notes: z.string().trim().max(4000).nullable(),
  confirmed: z.array(z.enum(unusualReasons)).max(unusualReasons.length).default([]),
})
export type ChangeJob = z.infer<typeof ChangeJob>
export const BookVisit = command({
  jobId: Id,
  jobVersion: Version,
  crewDayId: Id,
  at: ClockTime,
  /** Told to the customer in the same breath: the crew comes between the two clock times. */
  promise: z.object({ from: ClockTime, until: ClockTime }).optional(),
  confirmed: z.array(z.enum(unusualReasons)).max(unusualReasons.length).default([]),
})
export type BookVisit = z.infer<typeof BookVisit>
export const MoveVisit = command({
  visitId: Id,
  version: Version,
  /** Another sheet; without it the visit stays on its own. */
  crewDayId: Id.optional(),
  at: ClockTime,
  confirmed: z.array(z.enum(unusualReasons)).max(unusualReasons.length).default([]),
})
export type MoveVisit = z.infer<typeof MoveVisit>
export const CallOffVisit = command({
  visitId: Id,
  version: Version,
  confirmed: z.array(z.enum(unusualReasons)).max(unusualReasons.length).optional(),
})
export type CallOffVisit = z.infer<typeof CallOffVisit>
export const MissVisit = command({ visitId: Id, version: Version })
export type MissVisit = z.infer<typeof MissVisit>
/** Until when a visit of today lasts, as the crew says; null takes it back. */
export const SayUntil = command({ visitId: Id, version: Version, until: ClockTime.nullable() })
export type SayUntil = z.infer<typeof SayUntil>
export const HoldJob = command({
  jobId: Id,
  version: Version,
  reason: z.string().trim().min(1, 'say why').max(1000),
  /** The customer knows: a promised visit that comes off puts nobody on the list of whom to call. */
  told: z.boolean().optional(),
})
export type HoldJob = z.infer<typeof HoldJob>
export const ResumeJob = command({ jobId: Id, version: Version })
export type ResumeJob = z.infer<typeof ResumeJob>

export const jobs = {
  list: oc.route({ method: 'GET', path: '/jobs' }).input(ListJobs).output(pageOf(JobRow)),
  /** How many jobs stand in each open state, and the towns to filter by. */
  overview: oc
    .route({ method: 'GET', path: '/jobs/overview' })
    .output(z.object({ counts: z.record(z.enum(jobStates), z.number()), towns: z.array(z.string()) })),
  get: oc
    .route({ method: 'GET', path: '/jobs/{jobId}' })
    .input(z.object({ jobId: Id }))
    .output(JobPage),
  places: oc.route({ method: 'GET', path: '/jobs/{jobId}/places' }).input(PlacesAsked).output(JobPlaces),
  /** What can be worked on at a site, to propose a job for. */
  choices: oc
    .route({ method: 'GET', path: '/jobs/choices' })
    .input(z.object({ siteId: Id }))
    .output(
      z.object({
        siteId: Id,
        siteLabel: z.string(),
        town: z.string().nullable(),
        softeners: z.array(
          z.object({ id: Id, label: z.string(), beds: z.array(z.object({ ...BedRecord.shape, openRebedJobId: Id.nullable() })) }),
        ),
      }),
    ),
  propose: oc.route({ method: 'POST', path: '/jobs/propose-for-beds' }).input(ProposeJobs).output(Proposals),
  proposePlanned: oc.route({ method: 'POST', path: '/jobs/propose-planned' }).input(ProposePlanned).output(Proposals),
  proposeOne: oc.route({ method: 'POST', path: '/jobs/propose' }).input(ProposeJob).output(JobMoved),
  book: oc.route({ method: 'POST', path: '/jobs/book' }).input(BookVisit).output(VisitPlaced),
  moveVisit: oc.route({ method: 'POST', path: '/jobs/move-visit' }).input(MoveVisit).output(VisitPlaced),
  callOffVisit: oc
    .route({ method: 'POST', path: '/jobs/call-off-visit' })
    .input(CallOffVisit)
    .output(z.object({ visitId: Id, version: Version, jobId: Id, jobVersion: Version, state: z.enum(jobStates) })),
  /** Nobody came: off its sheet, and its customer is to be called today. */
  missVisit: oc
    .route({ method: 'POST', path: '/jobs/miss-visit' })
    .input(MissVisit)
    .output(z.object({ visitId: Id, version: Version, jobId: Id, jobVersion: Version, state: z.enum(jobStates) })),
  sayUntil: oc
    .route({ method: 'POST', path: '/jobs/say-until' })
    .input(SayUntil)
    .output(z.object({ visitId: Id, version: Version })),
  change: oc.route({ method: 'POST', path: '/jobs/change' }).input(ChangeJob).output(JobMoved),
  hold: oc.route({ method: 'POST', path: '/jobs/hold' }).input(HoldJob).output(JobMoved),
  callOff: oc.route({ method: 'POST', path: '/jobs/call-off' }).input(HoldJob).output(JobMoved),
  resume: oc.route({ method: 'POST', path: '/jobs/resume' }).input(ResumeJob).output(JobMoved),
}
