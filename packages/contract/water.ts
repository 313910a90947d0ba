import { recordedDisinfectants } from '@almanac/records/disinfectant'
import { measuringPoints } from '@almanac/records/measuring-point'
import { supplyKinds } from '@almanac/records/supply-kind'
import { oc } from '@orpc/contract'
import * as z from 'zod'
import { command, Day, Entered, Id, Instant, page, pageOf, Version, Why } from './shared.ts'

const HardnessEntered = z.object({ value: z.number(), unit: z.enum(['gpg', 'mg/L', 'dH', 'fH', 'mmol/L']) })
const ConcentrationEntered = z.object({ value: z.number(), unit: z.enum(['mg/L', 'ug/L']) })

/** What a supply delivers from a day on; the values as typed stay beside the canonical ones. */
export const SupplyPeriodRow = z.object({
  id: Id,
  version: Version,
  fromDay: Day.nullable(),
  disinfectant: z.enum(recordedDisinfectants),
  residualMgL: z.number().nullable(),
  hardnessGpg: z.number().nullable(),
  ironMgL: z.number().nullable(),
  entered: z.record(z.string(), Entered),
  source: z.string(),
})
export type SupplyPeriodRow = z.infer<typeof SupplyPeriodRow>

export const SupplyRow = z.object({
  id: Id,
  name: z.string(),
  kind: z.enum(supplyKinds),
  sites: z.number().int(),
  present: SupplyPeriodRow.nullable(),
})
export type SupplyRow = z.infer<typeof SupplyRow>

/** How far a change of the supply moved its beds' middle days. */
const ForecastMove = z.object({
  runId: Id,
  at: Instant,
  cause: z.string(),
  beds: z.number().int(),
  earlier: z.number().int(),
  meanDays: z.number(),
})

export const SupplyPage = SupplyRow.extend({
  version: Version,
  notes: z.string().nullable(),
  bedsWatched: z.number().int(),
  periods: z.array(SupplyPeriodRow),
  moves: z.array(ForecastMove),
})
export type SupplyPage = z.infer<typeof SupplyPage>

export const AddSupplyInput = command({ name: z.string().trim().min(1).max(120), kind: z.enum(supplyKinds) })
export type AddSupplyInput = z.infer<typeof AddSupplyInput>
/** What a supply delivers from a day on. Of disinfectant and values: left out means as before, null (`unknown` for the disinfectant) that nobody knows. */
export const AddPeriodInput = command({
  waterSupplyId: Id,
  fromDay: Day.nullable(),
  disinfectant: z.enum(recordedDisinfectants).optional(),
  residual: ConcentrationEntered.nullable().optional(),
  hardness: HardnessEntered.nullable().optional(),
  iron: ConcentrationEntered.nullable().optional(),
  why: Why,
  source: z.string().trim().min(1).max(200),
})
export type AddPeriodInput = z.infer<typeof AddPeriodInput>
export const WithdrawInput = command({ id: Id, version: Version })
export type WithdrawInput = z.infer<typeof WithdrawInput>

export const RecordTestInput = command({
  siteId: Id,
  softenerId: Id.optional(),
  day: Day,
  point: z.enum(measuringPoints),
  hardness: HardnessEntered.optional(),
  freeChlorine: ConcentrationEntered.optional(),
  totalChlorine: ConcentrationEntered.optional(),
  iron: ConcentrationEntered.optional(),
  manganese: ConcentrationEntered.optional(),
  ph: z.number().optional(),
  why: Why,
})
export type RecordTestInput = z.infer<typeof RecordTestInput>

export const TestRow = z.object({
  id: Id,
  version: Version,
  day: Day,
  point: z.enum(measuringPoints),
  hardnessGpg: z.number().nullable(),
  freeChlorineMgL: z.number().nullable(),
  totalChlorineMgL: z.number().nullable(),
  ironMgL: z.number().nullable(),
  manganeseMgL: z.number().nullable(),
  ph: z.number().nullable(),
  entered: z.record(z.string(), Entered),
  source: z.string(),
})
export type TestRow = z.infer<typeof TestRow>

export const SiteWater = z.object({
  siteId: Id,
  siteLabel: z.string(),
  softeners: z.array(z.object({ id: Id, label: z.string() })),
  tests: z.array(TestRow),
})
export type SiteWater = z.infer<typeof SiteWater>

export const water = {
  supplies: oc.route({ method: 'GET', path: '/water/supplies' }).input(page({})).output(pageOf(SupplyRow)),
  supply: oc
    .route({ method: 'GET', path: '/water/supply' })
    .input(z.object({ waterSupplyId: Id }))
    .output(SupplyPage),
  addSupply: oc
    .route({ method: 'POST', path: '/water/add-supply' })
    .input(AddSupplyInput)
    .output(z.object({ waterSupplyId: Id })),
  addPeriod: oc
    .route({ method: 'POST', path: '/water/add-period' })
    .input(AddPeriodInput)
    .output(z.object({ periodId: Id, bedsToForecast: z.number().int() })),
  withdrawPeriod: oc
    .route({ method: 'POST', path: '/water/withdraw-period' })
    .input(WithdrawInput)
    .output(z.object({ id: Id, version: Version })),
  site: oc
    .route({ method: 'GET', path: '/water/site' })
    .input(z.object({ siteId: Id }))
    .output(SiteWater),
  recordTest: oc
    .route({ method: 'POST', path: '/water/record-test' })
    .input(RecordTestInput)
    .output(z.object({ testId: Id })),
  withdrawTest: oc
    .route({ method: 'POST', path: '/water/withdraw-test' })
    .input(WithdrawInput)
    .output(z.object({ id: Id, version: Version })),
}
