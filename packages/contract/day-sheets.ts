import { unusualReasons } from '@almanac/records/day-plan'
import { jobKinds } from '@almanac/records/job-kind'
import { jobStates } from '@almanac/records/job-state'
import { visitOutcomes } from '@almanac/records/visit-outcome'
import { visitStates } from '@almanac/records/visit-state'
import { oc } from '@orpc/contract'
import * as z from 'zod'
import { AskedFor } from './asked-for.ts'
import { BedRecord } from './bed-record.ts'
import { DrivePace } from './drive-pace.ts'
import { ClockTime, command, Day, Id, Instant, Version } from './shared.ts'
import { WhomToCall } from './site-facts.ts'

/** A drive in whole minutes and tenths of road miles; null where a place is not known. `server`: by roads; `estimated`: from coordinates. */
export const SheetDrive = z.object({
  basis: z.enum(['estimated', 'server', 'unknown']),
  minutes: z.number().nullable(),
  miles: z.number().nullable(),
})
export type SheetDrive = z.infer<typeof SheetDrive>

/** Degrees north and east; `about` when it is only the middle of the postcode's area. */
const SheetPlace = z.object({ latitude: z.number(), longitude: z.number(), about: z.boolean() })

export const SheetVisit = z.object({
  id: Id,
  version: Version,
  jobId: Id,
  jobVersion: Version,
  jobState: z.enum(jobStates),
  kind: z.enum(jobKinds),
  state: z.enum(visitStates),
  /** The arrival window told to the customer. */
  arriveFrom: Instant.nullable(),
  arriveUntil: Instant.nullable(),
  outcome: z.enum(visitOutcomes).nullable(),
  /** When its crew began, when it was closed out, and until when it is said to last; null where nobody said. */
  startedAt: Instant.nullable(),
  closedAt: Instant.nullable(),
  runningUntil: Instant.nullable(),
  startsAt: Instant,
  endsAt: Instant,
  siteId: Id,
  siteLabel: z.string(),
  street: z.string().nullable(),
  town: z.string().nullable(),
  whom: WhomToCall,
  accessNotes: z.string().nullable(),
  crewSize: z.number(),
  notes: z.string().nullable(),
  askedFor: AskedFor.nullable(),
  bed: BedRecord.nullable(),
  place: SheetPlace.nullable(),
  /** What speaks against it where it stands, a sentence each: parts that are not there, a crew not down for it. */
  warnings: z.array(z.string()),
})
export type SheetVisit = z.infer<typeof SheetVisit>

/** One crew's day: who, what they drive, their hours, and their visits in order. Called-off visits are left out. */
export const DaySheet = z.object({
  id: Id,
  version: Version,
  day: Day,
  name: z.string(),
  members: z.array(z.object({ colleagueId: Id, name: z.string() })),
  vehicle: z.object({ id: Id, name: z.string(), volumeFt3: z.number(), weightLb: z.number() }).nullable(),
  startsAt: Instant,
  endsAt: Instant,
  notes: z.string().nullable(),
  /** What does not agree with its people and vehicle, a sentence each. */
  warnings: z.array(z.string()),
  /** The home the crew starts from and comes back to; null for the yard. */
  home: z.object({ latitude: z.number(), longitude: z.number() }).nullable(),
  visits: z.array(SheetVisit),
  /** Breaks where they lie beside visits and drives; `fits` is false where nothing leaves room for one. */
  breaks: z.array(z.object({ startsAt: Instant, endsAt: Instant, fits: z.boolean() })),
  /** One before each visit, from the yard or the visit before, and one back to the yard; none without visits. */
  drives: z.array(SheetDrive),
})
export type DaySheet = z.infer<typeof DaySheet>

/** A job that would fit into one free stretch of a sheet, with what putting it off costs: its dates and its risk. */
export const SheetFit = z.object({
  jobId: Id,
  jobVersion: Version,
  kind: z.enum(jobKinds),
  siteId: Id,
  siteLabel: z.string(),
  town: z.string().nullable(),
  at: ClockTime,
  startsAt: Instant,
  endsAt: Instant,
  /** End of the free stretch: from `startsAt` to here the job could be moved about. */
  freeUntil: Instant,
  minutes: z.number(),
  crewSize: z.number(),
  /** Minutes of driving it adds to the crew's day; null where a place is not known. */
  addedDriveMinutes: z.number().nullable(),
  dueEarliest: Day.nullable(),
  dueLatest: Day.nullable(),
  /** Chance of failure within 3 months, for beds with a forecast. */
  chance3Months: z.number().nullable(),
})
export type SheetFit = z.infer<typeof SheetFit>

const SheetPlaced = z.object({ crewDayId: Id, version: Version })
const people = { colleagueIds: z.array(Id).min(1, 'choose at least one person').max(6), vehicleId: Id.nullable() }
const hours = { from: ClockTime, until: ClockTime }

export const OpenDaySheet = command({ day: Day, name: z.string().trim().min(1, 'enter a name for the crew').max(80), ...people, ...hours })
export type OpenDaySheet = z.infer<typeof OpenDaySheet>
export const CopyDaySheets = command({ day: Day })
export type CopyDaySheets = z.infer<typeof CopyDaySheets>
export const ChangeDaySheet = command({
  crewDayId: Id,
  version: Version,
  name: z.string().trim().min(1, 'enter a name for the crew').max(80),
  ...people,
  ...hours,
  notes: z.string().max(2000).nullable(),
  confirmed: z.array(z.enum(unusualReasons)).max(unusualReasons.length).optional(),
})
export type ChangeDaySheet = z.infer<typeof ChangeDaySheet>

export const daySheets = {
  day: oc
    .route({ method: 'GET', path: '/day-sheets' })
    .input(z.object({ day: Day }))
    .output(
      z.object({
        day: Day,
        sheets: z.array(DaySheet),
        /** The public holiday that the firm keeps on this day. */
        holiday: z.string().nullable(),
        yard: z.object({ latitude: z.number(), longitude: z.number() }).nullable(),
        /** How the firm's own drives compare with the usual ones. */
        /** What drives were worked out with; null: usual speeds. */
        pace: DrivePace.nullable(),
        /** The last day before this one that has sheets, to copy from. */
        copyFrom: Day.nullable(),
        /** Proposed jobs in the company: what still needs a place. */
        needPlace: z.number(),
        /** Usual working hours, for a new sheet. */
        usual: z.object({ from: ClockTime, until: ClockTime }),
      }),
    ),
  /** Jobs that would fit into one sheet, most pressing first, and why others do not. */
  fits: oc
    .route({ method: 'GET', path: '/day-sheets/{crewDayId}/fits' })
    .input(z.object({ crewDayId: Id }))
    .output(z.object({ fits: z.array(SheetFit), left: z.array(z.object({ reason: z.string(), jobs: z.number() })) })),
  /** People and vehicles that can stand on a sheet of a day. */
  crewChoices: oc
    .route({ method: 'GET', path: '/day-sheets/crew-choices' })
    .input(z.object({ day: Day }))
    .output(
      z.object({
        /** `away`: why not on that day, to stand after the name. */
        colleagues: z.array(z.object({ id: Id, name: z.string(), away: z.string().nullable() })),
        vehicles: z.array(z.object({ id: Id, name: z.string(), volumeFt3: z.number(), weightLb: z.number(), away: z.string().nullable() })),
      }),
    ),
  open: oc.route({ method: 'POST', path: '/day-sheets/open' }).input(OpenDaySheet).output(SheetPlaced),
  copy: oc
    .route({ method: 'POST', path: '/day-sheets/copy' })
    .input(CopyDaySheets)
    .output(
      z.object({
        fromDay: Day,
        opened: z.array(SheetPlaced),
        /** Sheets of that day that were left out. */
        left: z.array(z.object({ crewDayId: Id, reason: z.enum(['hours', 'name', 'person', 'vehicle']) })),
      }),
    ),
  change: oc.route({ method: 'POST', path: '/day-sheets/change' }).input(ChangeDaySheet).output(SheetPlaced),
}
