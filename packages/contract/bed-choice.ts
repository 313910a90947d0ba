import { beadConditions } from '@almanac/records/bead-condition'
import { recordedDisinfectants } from '@almanac/records/disinfectant'
import { ownerVerdicts } from '@almanac/records/owner-verdict'
import { supplyKinds } from '@almanac/records/supply-kind'
import { oc } from '@orpc/contract'
import * as z from 'zod'
import { BedRecord, TwinTank } from './bed-record.ts'
import { command, Day, Id, Instant } from './shared.ts'
import { line, WhomToCall } from './site-facts.ts'

const StoresLine = z.object({
  name: z.string(),
  kind: z.string(),
  unit: z.string(),
  bagFt3: z.number().nullable(),
  resinKind: z.string().nullable(),
  tubeOdIn: z.number().nullable(),
  onHand: z.number(),
  priceMinor: z.number().nullable(),
})

/** What a rebed of a bed is planned from: tank, place, water, and the stores with their prices. Of the customer only whom to call. */
export const BedPlanFacts = z.object({
  bed: BedRecord,
  beganEarliest: Day.nullable(),
  beganLatest: Day.nullable(),
  beganAsWritten: z.string().nullable(),
  softener: z
    .object({
      label: z.string(),
      twin: TwinTank.nullable(),
      installedLatest: Day.nullable(),
      installedEarliest: Day.nullable(),
      peopleServed: z.number().nullable(),
    })
    .nullable(),
  site: z
    .object({
      id: Id,
      label: z.string(),
      street: z.string().nullable(),
      town: z.string().nullable(),
      accessNotes: z.string().nullable(),
      whom: WhomToCall,
    })
    .nullable(),
  water: z.object({
    source: z.enum(supplyKinds).nullable(),
    hardnessGpg: z.number().nullable(),
    ironMgL: z.number().nullable(),
    temperatureC: z.number().nullable(),
    disinfectant: z.enum(recordedDisinfectants).nullable(),
  }),
  /** How the beads looked when somebody last saw them. */
  beads: z.enum(beadConditions).nullable(),
  stores: z.array(StoresLine),
})
export type BedPlanFacts = z.infer<typeof BedPlanFacts>

const Years = z.array(z.number())

/** Years and factors, equally likely, smallest first: lives of a new bed of 8% on this water, and how many times as long 10% lasts. */
const BedLives = z.object({ newBedYears: Years, longerTen: Years, assumptions: z.array(z.string()) })

/** What the three questions of a bed are answered from: which resin; rebed, clean or replace; owner or firm. */
const toldYesNo = z.boolean().nullable()
/** What the owner was asked; null where nobody asked. */
const OwnerTold = z.object({
  access: z.enum(['level', 'stairs', 'tight']).nullable(),
  ...{ helper: toldYesNo, hasBypass: toldYesNo, bypassHolds: toldYesNo, valveNeedsPower: toldYesNo },
  ...{ metalPipe: toldYesNo, lawAllows: toldYesNo, stopCase: toldYesNo },
  pressurePsi: z.number().min(0).max(1000).nullable(),
})
export const KeepDecision = command({
  bedId: Id,
  told: OwnerTold,
  /** What it came to on the page: kept only where the record says the same. */
  verdict: z.enum(ownerVerdicts),
  law: line(300),
})
export type KeepDecision = z.infer<typeof KeepDecision>

export const BedChoice = z.object({
  plan: BedPlanFacts,
  /** Null where the record contradicts itself; then `refusal` says how. */
  lives: BedLives.nullable(),
  refusal: z.string().nullable(),
  plannedRebedMinor: z.number().nullable(),
  /** Whether an owner may do it alone, as it was decided; the last first. */
  decisions: z.array(
    z.object({
      id: Id,
      at: Instant,
      by: z.string().nullable(),
      verdict: z.enum(ownerVerdicts),
      reasons: z.array(z.string()),
      law: z.string().nullable(),
    }),
  ),
})
export type BedChoice = z.infer<typeof BedChoice>

export const bedChoice = {
  facts: oc
    .route({ method: 'GET', path: '/beds/{bedId}/choice' })
    .input(z.object({ bedId: Id }))
    .output(BedChoice),
  keepDecision: oc
    .route({ method: 'POST', path: '/beds/owner-decision' })
    .input(KeepDecision)
    .output(z.object({ decisionId: Id })),
}
