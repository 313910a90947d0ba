import { dueGroupings } from '@almanac/records/forecast-run'
import { jobStates } from '@almanac/records/job-state'
import { recordedResinKinds } from '@almanac/records/resin-kind'
import { oc } from '@orpc/contract'
import * as z from 'zod'
import { Desk } from './desk.ts'
import { ShownFit } from './forecasts.ts'
import { Day, Id, Instant, Month, page, pageOf } from './shared.ts'
import { WhomToCall } from './site-facts.ts'

/** A bed that comes due, as the owner's list shows it. Chances 0 to 1; lengths in inches, volumes ft³. */
export const DueBed = z.object({
  bedId: Id,
  siteId: Id,
  siteLabel: z.string(),
  softenerId: Id,
  /** Who holds the site, and whom to call. */
  whom: WhomToCall,
  /** The last call of two months that said since when its water is hard, or that nobody answered. */
  answer: z.object({ at: Instant, hardSinceDay: Day.nullable() }).nullable(),
  town: z.string().nullable(),
  tank: z.object({
    sizeAsWritten: z.string().nullable(),
    diameterIn: z.number().nullable(),
    heightIn: z.number().nullable(),
    nominalGrains: z.number().nullable(),
    twin: z.boolean(),
  }),
  resinKind: z.enum(recordedResinKinds),
  volumeFt3: z.number().nullable(),
  gravelLb: z.number().nullable(),
  beganEarliest: Day.nullable(),
  beganLatest: Day.nullable(),
  beganAsWritten: z.string().nullable(),
  due10Day: Day,
  due50Day: Day,
  due90Day: Day,
  chance12Months: z.number(),
  chanceAlreadyFailed: z.number(),
  /** The month that the levelled plan gives it, among which it chose; null where there is no plan, or it may wait longer, or wants a call first. */
  planned: z.object({ month: Month, earliestMonth: Month, latestMonth: Month }).nullable(),
  job: z.object({ id: Id, state: z.enum(jobStates) }).nullable(),
})
export type DueBed = z.infer<typeof DueBed>

const Band = z.object({ mean: z.number(), low: z.number(), high: z.number() })

export const DueMonths = z.object({
  /** Null before the first forecast has run. */
  asOfDay: Day.nullable(),
  computedAt: Instant.nullable(),
  beds: z.number().int(),
  year: Band.nullable(),
  /** By how much past misses widened the ranges of `year` and `years`; 1: not at all. */
  widenedBy: z.number(),
  /** Five years from now on, each with its first month. */
  years: z.array(Band.extend({ from: z.string() })),
  /** Sixty months. */
  months: z.array(Band.extend({ month: z.string(), booked: z.number().int() })),
  /** Beds of the picture expected to have failed already, unseen: the sum of their chances, as in the groups. Not among those of the months. */
  failedAlready: z.number(),
  /** What the forecasts learned from; null while they go by industry rules of thumb. */
  fit: ShownFit.nullable(),
  /** Supplies with enough beds for a picture of their own. */
  supplies: z.array(z.object({ id: Id, name: z.string(), beds: z.number().int() })),
  /** Groups of the kind asked for, largest first, over the same months; `key` and `name` null for small groups together and where nothing is written down. */
  groups: z.array(
    z.object({
      key: z.string().nullable(),
      name: z.string().nullable(),
      beds: z.number().int(),
      /** Beds expected to have probably failed already. */
      failedAlready: z.number(),
      months: z.array(Band),
      years: z.array(Band),
    }),
  ),
})
export type DueMonths = z.infer<typeof DueMonths>

const DueSort = z.enum(['chance', 'due', 'age', 'failed', 'telling'])

export const due = {
  /** What the owner's page begins with. */
  desk: oc.route({ method: 'GET', path: '/due/desk' }).output(Desk),
  months: oc
    .route({ method: 'GET', path: '/due/months' })
    .input(z.object({ waterSupplyId: Id.optional(), by: z.enum(dueGroupings).optional() }))
    .output(DueMonths),
  beds: oc
    .route({ method: 'GET', path: '/due/beds' })
    .input(
      page({
        waterSupplyId: Id.optional(),
        /** Only beds that began so many years ago or more. */
        minAgeYears: z.number().min(0).max(100).optional(),
        minChance12Months: z.number().min(0).max(1).optional(),
        /** Only beds whose middle day falls in this month, 'YYYY-MM'. */
        month: Month.optional(),
        /** Only beds that the levelled plan gives to this month. */
        plannedMonth: Month.optional(),
        /** Only beds that have more likely failed than not, with no rebed under way: those to call about. */
        toCall: z.boolean().optional(),
        sort: DueSort.default('chance'),
      }),
    )
    .output(pageOf(DueBed)),
}
