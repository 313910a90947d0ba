import { driverKeys } from '@almanac/records/forecast-driver'
import { resinKinds } from '@almanac/records/resin-kind'
import { oc } from '@orpc/contract'
import * as z from 'zod'
import { command, Day, Id, Instant } from './shared.ts'

/** A cause with the years of a typical life that it took (positive) or gave. */
export const DriverLine = z.object({ key: z.enum(driverKeys), yearsTaken: z.number(), words: z.string() })

/** A list handed on as it was computed. */
const list = <T extends z.ZodType>(of: T) => z.array(of).readonly()

/** Past forecasts held against what came, as stored. Chances and shares 0 to 1. */
export const BacktestResult = z.object({
  /** Mean Brier score of each rule over 6 to 24 months ahead; lower is better. */
  scores: list(z.object({ method: z.string(), integratedBrier: z.number() })),
  /** By how many per cent the forecast's score lies below each rule's; negative where the rule did better. */
  skill: list(z.object({ method: z.string(), percent: z.number() })),
  /** How many outcomes fell into each twentieth of their forecast; even where the forecast is honest. */
  bins: list(z.number().int()),
  /** Share of outcomes inside the window of four in five, with its standard error; the error null in a look back of before it was kept. */
  coverage80: z.number(),
  coverageStandardError: z.number().nullable(),
  bedsScored: z.number().int(),
  /** Failures in the twelve months after each day stood on: expected, four times out of five between low and high, and what came. */
  counts: list(
    z.object({ originDay: Day, beds: z.number(), expected: z.number(), low: z.number(), high: z.number(), happened: z.number() }),
  ),
  /** Tenths of the chances given for two years ahead, and the share that failed. */
  reliability: list(z.object({ chance: z.number(), happened: z.number(), beds: z.number() })),
  /** What must be said with the figures, in sentences. */
  notes: list(z.string()),
  worst: z.array(z.object({ bedId: z.string(), originDay: Day, chance24Months: z.number(), failed: z.boolean() })),
})
export type BacktestResult = z.infer<typeof BacktestResult>

/** The fit in use: what it learned from. Null before the first. */
export const ShownFit = z.object({
  version: z.string(),
  asOfDay: Day,
  shownAt: Instant,
  records: z.number().int(),
  failures: z.number().int(),
  leftOut: z.array(z.object({ reason: z.string(), count: z.number().int() })),
  /** Share of each parameter's doubt that the records took away, 0 to 1. */
  learned: z.record(z.string(), z.number()),
  fellBackBecause: z.string().nullable(),
})
export type ShownFit = z.infer<typeof ShownFit>

export const TrackRecord = z.object({
  fit: ShownFit.nullable(),
  /** By how much the past years' misses widen today's ranges of a year's failures; 1: not at all. */
  widenedBy: z.number(),
  checked: z
    .object({
      asOfDay: Day,
      finishedAt: Instant,
      origins: z.array(Day),
      refusal: z.string().nullable(),
      result: BacktestResult.extend({
        worst: z.array(
          z.object({
            bedId: Id,
            siteLabel: z.string().nullable(),
            originDay: Day,
            chance24Months: z.number(),
            failed: z.boolean(),
            endedLatest: Day.nullable(),
          }),
        ),
      }).nullable(),
    })
    .nullable(),
})
export type TrackRecord = z.infer<typeof TrackRecord>

/** Costs in minor units of the company's currency. */
const Costs = z.object({
  plannedMinor: z.number().int(),
  failureMinor: z.number().int(),
  beadsMinor: z.number().int(),
  beadsShare: z.number(),
})

export const PolicyInput = z.object({
  waterSupplyId: Id.optional(),
  resinKind: z.enum(resinKinds).default('gel-8'),
  plannedMinor: z.number().int().min(1).max(2_000_000_000).optional(),
  failureMinor: z.number().int().min(0).max(2_000_000_000).optional(),
  beadsMinor: z.number().int().min(0).max(2_000_000_000).optional(),
  /** Share of failures with beads in the plumbing. */
  beadsShare: z.number().min(0).max(1).optional(),
  fixedAgeYears: z.number().min(1).max(40).default(12),
})
export type PolicyInput = z.infer<typeof PolicyInput>

/** A mean with the band of one in ten below and above, over the doubt about how long beds last. */
const Banded = z.object({ mean: z.number(), low: z.number(), high: z.number() })
const CostAtAge = z.object({ ageYears: z.number(), costPerYear: z.number(), low: z.number(), high: z.number() })

/** When it is cheapest to act. Costs in minor units a year and bed; ages in years. */
export const Policy = z.object({
  /** The supply it is for: the one asked for, else the one with most beds; null where there is none. */
  waterSupplyId: Id.nullable(),
  water: z.string(),
  supplies: z.array(z.object({ id: Id, name: z.string() })),
  costs: Costs,
  /** Where each cost came from. */
  costSources: z.record(z.string(), z.enum(['asked', 'settings', 'records', 'example'])),
  bedsWatched: z.number().int(),
  fit: ShownFit.nullable(),
  answer: z.discriminatedUnion('ok', [
    z.object({
      ok: z.literal(true),
      curve: list(CostAtAge),
      /** Null where waiting for the failure is cheapest. */
      best: z.object({ ageYears: z.number(), costPerYear: z.number() }).nullable(),
      window: z.object({ fromYears: z.number(), toYears: z.number() }).nullable(),
      /** Cheapest ages, one in ten below and above, over the doubt about how long beds last. */
      bestLow: z.number().nullable(),
      bestHigh: z.number().nullable(),
      /** Share of that doubt for which planning ahead is cheaper than waiting. */
      planShare: z.number(),
      runToFailurePerYear: z.number(),
      fixedAgePerYear: z.number(),
      /** Saved a year and bed by the best age; negative where another age would have been the better. */
      savedAgainstRunToFailure: Banded,
      savedAgainstFixedAge: Banded,
      medianLifeYears: z.number(),
    }),
    z.object({ ok: z.literal(false), reason: z.string() }),
  ]),
})
export type Policy = z.infer<typeof Policy>

/** The levelled plan of the run that is shown; null while it is being worked out. */
export const RebedPlan = z.object({
  id: Id,
  asOfDay: Day,
  finishedAt: Instant,
  /** It speaks of the forecasts shown now, not of the run before. */
  current: z.boolean(),
  rebedsPerMonth: z.number().int(),
  riskLimit: z.number(),
  /** Beds that have passed the limit already: they want a call first. */
  pastLimit: z.number().int(),
  hoursEach: z.number(),
  /** Proven: within the same hours no plan has fewer failures while waiting by more than this share; null for a plan of before that was kept. */
  gap: z.number().nullable(),
  refusal: z.string().nullable(),
  months: z.array(
    z.object({
      month: z.string(),
      rebeds: z.number().int(),
      hours: z.number(),
      overtimeHours: z.number(),
      resinFt3: z.number(),
      gravelLb: z.number(),
    }),
  ),
})
export type RebedPlan = z.infer<typeof RebedPlan>

export const forecasts = {
  trackRecord: oc.route({ method: 'GET', path: '/forecasts/track-record' }).output(TrackRecord),
  checkAgain: oc
    .route({ method: 'POST', path: '/forecasts/track-record' })
    .input(command({}))
    .output(z.object({ asked: z.literal(true) })),
  policy: oc.route({ method: 'GET', path: '/forecasts/policy' }).input(PolicyInput).output(Policy),
  plan: oc.route({ method: 'GET', path: '/forecasts/plan' }).output(RebedPlan.nullable()),
}
