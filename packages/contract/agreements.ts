import { agreementEnds, agreementKinds, pricePers, turnUnits } from '@almanac/records/agreement'
import { jobKinds } from '@almanac/records/job-kind'
import { jobStates } from '@almanac/records/job-state'
import { oc } from '@orpc/contract'
import * as z from 'zod'
import { command, Day, Id, Month, SeenVersion, Version } from './shared.ts'
import { line } from './site-facts.ts'

/** How often it comes again. */
const Every = z.object({ count: z.number().int().min(1).max(60), unit: z.enum(turnUnits) })
/** In the currency's smallest unit; null where nothing is agreed. */
const Price = z.object({ minor: z.number().int().min(0).max(100_000_000).nullable(), per: z.enum(pricePers) })
export type Price = z.infer<typeof Price>

const turnStandings = ['open', 'under-way', 'done', 'skipped'] as const

/** A turn as a site's card shows it. */
const TurnLine = z.object({
  dueDay: Day,
  /** 0 while nothing is kept of it. */
  version: SeenVersion,
  standing: z.enum(turnStandings),
  late: z.boolean(),
  job: z.object({ id: Id, kind: z.enum(jobKinds), state: z.enum(jobStates) }).nullable(),
  doneDay: Day.nullable(),
  reason: z.string().nullable(),
  /** What the visit that did it measured and saw: hardness of the softened water, in grains per gallon, and the salt. */
  outletHardnessGpg: z.number().nullable(),
  salt: z.enum(['enough', 'low', 'bridged', 'empty']).nullable(),
})
export type TurnLine = z.infer<typeof TurnLine>

const agreementShape = {
  id: Id,
  version: Version,
  kind: z.enum(agreementKinds),
  every: Every,
  softenerLabel: z.string().nullable(),
  /** The price line that counts today, else the last. */
  price: Price.nullable(),
  /** The last day agreed; null while nothing ends it. */
  untilDay: Day.nullable(),
  endedDay: Day.nullable(),
  endWhy: z.enum(agreementEnds).nullable(),
}

const AgreementCard = z.object({
  ...agreementShape,
  firstDay: Day,
  notes: z.string().nullable(),
  /** Every price line, the newest first. */
  terms: z.array(z.object({ id: Id, fromDay: Day, untilDay: Day.nullable(), price: Price })),
  /** The turns of the last two years and the next one, the latest first. */
  turns: z.array(TurnLine),
})
export type AgreementCard = z.infer<typeof AgreementCard>

const place = { siteId: Id, siteLabel: z.string(), town: z.string().nullable(), customerName: z.string().nullable() }

/** A turn in a month of the rounds. */
const RoundTurn = z.object({
  ...place,
  agreementId: Id,
  kind: z.enum(agreementKinds),
  every: Every,
  softenerLabel: z.string().nullable(),
  dueDay: Day,
  version: SeenVersion,
  standing: z.enum(turnStandings),
  job: z.object({ id: Id, kind: z.enum(jobKinds), state: z.enum(jobStates) }).nullable(),
  /** Hours of one person. */
  hours: z.number(),
  /** The crews have the hours for it in its month. */
  fits: z.boolean(),
})
export type RoundTurn = z.infer<typeof RoundTurn>

const Rounds = z.object({
  /** The months ahead: how many turns are put there, and how many hours of one person the crews have left for them. */
  months: z.array(z.object({ month: Month, turns: z.number().int(), done: z.number().int(), hours: z.number(), freeHours: z.number() })),
  month: Month,
  due: z.array(RoundTurn),
  /** Due before, and neither done nor skipped. */
  late: z.array(RoundTurn),
  /** Agreements that end within two months, or that ended lately and were not renewed. */
  ending: z.array(z.object({ ...place, ...agreementShape, lastDay: Day })),
})
export type Rounds = z.infer<typeof Rounds>

const PriceLine = { untilDay: Day.nullable(), price: Price }
export const AddAgreement = command({
  siteId: Id,
  softenerId: Id.nullable(),
  kind: z.enum(agreementKinds),
  every: Every,
  /** The day of its first turn. */
  firstDay: Day,
  ...PriceLine,
  notes: line(1000),
})
export type AddAgreement = z.infer<typeof AddAgreement>
export const RenewAgreement = command({ agreementId: Id, version: Version, fromDay: Day, ...PriceLine })
export type RenewAgreement = z.infer<typeof RenewAgreement>
export const EndAgreement = command({ agreementId: Id, version: Version, lastDay: Day, why: z.enum(['asked', 'mistake']) })
export type EndAgreement = z.infer<typeof EndAgreement>
/** What became of a turn without a job of ours; `open` takes that back. */
export const SettleTurn = command({
  agreementId: Id,
  dueDay: Day,
  version: SeenVersion,
  outcome: z.enum(['done', 'skipped', 'open']),
  /** The day it was done. */
  doneDay: Day.nullable(),
  reason: line(500),
})
export type SettleTurn = z.infer<typeof SettleTurn>
/** The turns of a month as they were shown. */
export const ProposeTurns = command({
  month: Month,
  turns: z
    .array(z.object({ agreementId: Id, dueDay: Day }))
    .min(1)
    .max(500),
})
export type ProposeTurns = z.infer<typeof ProposeTurns>

const Changed = z.object({ id: Id, version: Version })

export const agreements = {
  ofSite: oc
    .route({ method: 'GET', path: '/agreements/of-site/{siteId}' })
    .input(z.object({ siteId: Id }))
    .output(z.array(AgreementCard)),
  rounds: oc
    .route({ method: 'GET', path: '/agreements/rounds' })
    .input(z.object({ month: Month.optional() }))
    .output(Rounds),
  add: oc.route({ method: 'POST', path: '/agreements' }).input(AddAgreement).output(Changed),
  renew: oc.route({ method: 'POST', path: '/agreements/renew' }).input(RenewAgreement).output(Changed),
  end: oc.route({ method: 'POST', path: '/agreements/end' }).input(EndAgreement).output(Changed),
  settleTurn: oc
    .route({ method: 'POST', path: '/agreements/settle-turn' })
    .input(SettleTurn)
    .output(z.object({ agreementId: Id, dueDay: Day, version: SeenVersion })),
  propose: oc
    .route({ method: 'POST', path: '/agreements/propose' })
    .input(ProposeTurns)
    .output(
      z.object({
        results: z.array(
          z.discriminatedUnion('status', [
            z.object({ agreementId: Id, dueDay: Day, status: z.literal('proposed'), jobId: Id }),
            z.object({ agreementId: Id, dueDay: Day, status: z.literal('refused'), reason: z.string() }),
          ]),
        ),
      }),
    ),
}
