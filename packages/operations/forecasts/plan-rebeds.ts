import type { Tx } from '@almanac/database/client'
import { dateOf } from '@almanac/database/days'
import { inCompany } from '@almanac/database/in-company'
import { readMonthChances } from '@almanac/database/read/month-chances'
import { readRebedSizes } from '@almanac/database/read/plan-inputs'
import { readVisitLengths } from '@almanac/database/read/visit-lengths'
import { commandTools } from '@almanac/database/run-command'
import type { LevelledBed, LevelPlan } from '@almanac/forecast/fleet/level-rebeds'
import { materialNeeds } from '@almanac/forecast/fleet/material-needs'
import { now } from '@almanac/runtime/clock'
import { newId } from '@almanac/runtime/ids'
import type { TaskPayloads } from '@almanac/runtime/queues'
import { runInWorkerThread } from '@almanac/runtime/run-in-worker-thread'
import { jobKindFacts } from '@almanac/service-rules/jobs/job-kinds'
import { learnDurations } from '@almanac/service-rules/jobs/learn-durations'
import type { Result } from '@almanac/units/result'
import { companyFacts } from '../shared/company-facts.ts'
import { monthMeans, STORED_LENGTH, STORED_MONTHS } from './bed-months.ts'
import { crewCapacity } from './crew-capacity.ts'
import type { LevelInput } from './level-aside.ts'

/** Months a plan reaches: the solver weighs each bed against each month, so the largest firms plan a year. */
const PLAN_MONTHS = STORED_MONTHS
const LARGE_FIRM_MONTHS = 12
const LARGE_FIRM_BEDS = 5_000

/** A bed is not done before its early due date, the day by which one in ten such beds has failed: the date its reminder and its job go by. */
const EARLY_CHANCE = 0.1

const ASIDE = { module: '@almanac/operations/forecasts/level-aside', seconds: 600, memoryMb: 4096 }

type Sized = LevelledBed & { failedBy: number[]; resinFt3: number; gravelLb: number }

const mean = (values: readonly number[]) => (values.length === 0 ? 0 : values.reduce((sum, one) => sum + one, 0) / values.length)

/** The beds to plan for, each with its chance of having failed by the end of each month and what its rebed takes. */
async function readBeds(tx: Tx, companyId: string) {
  const sizes = await readRebedSizes(tx, companyId)
  const lengths = await readVisitLengths(tx, companyId, now(), 'rebed')
  const lengthOf = learnDurations(lengths.map((one) => ({ ...one, kind: 'rebed' })))
  const known = [...sizes.values()]
  const usual = {
    volumeFt3: mean(known.flatMap((one) => one.volumeFt3 ?? [])),
    gravelLb: mean(known.flatMap((one) => one.gravelLb ?? [])),
  }
  const beds: (Sized & { chanceAlreadyFailed: number })[] = []
  let run: { runId: string; asOfDay: string } | null = null
  for await (const bed of readMonthChances(tx, companyId)) {
    if (!run || bed.asOfDay > run.asOfDay) run = bed
    const size = sizes.get(bed.bedId)
    if (!size || bed.chances.length !== STORED_LENGTH) continue
    let sum = bed.chanceAlreadyFailed
    const failedBy = Array.from(monthMeans(bed.chances).slice(0, PLAN_MONTHS), (chance) => (sum += chance))
    beds.push({
      id: bed.bedId,
      crewHours: (lengthOf('rebed', size.diameterIn).middle * jobKindFacts.rebed.usualCrew) / 60,
      failedBy,
      resinFt3: size.volumeFt3 ?? usual.volumeFt3,
      gravelLb: size.gravelLb ?? usual.gravelLb,
      chanceAlreadyFailed: bed.chanceAlreadyFailed,
    })
  }
  return { beds, run }
}

/** The month so many after that of a day, 'YYYY-MM'. */
function monthAfter(asOfDay: string, later: number): string {
  const [year = 0, first = 1] = asOfDay.split('-').map(Number)
  return `${year + Math.floor((first - 1 + later) / 12)}-${String(((first - 1 + later) % 12) + 1).padStart(2, '0')}`
}

/** Month by month what the plan asks for: each bed in its month for certain. */
function asMonths(plan: LevelPlan, beds: readonly Sized[], asOfDay: string, count: number) {
  const planned = beds.flatMap(({ id, resinFt3, gravelLb, crewHours }) => {
    const month = plan.months.get(id) ?? null
    return month === null ? [] : [{ chances: { [month]: 1, length: count }, kit: { resinFt3, gravelLb, crewHours } }]
  })
  return materialNeeds(planned, count).map(({ month, rebeds, resinFt3, gravelLb, crewHours }) => ({
    month: monthAfter(asOfDay, month),
    rebeds,
    hours: crewHours,
    overtimeHours: plan.overtimeHours[month] ?? 0,
    resinFt3,
    gravelLb,
  }))
}

/** Rows in one statement: well under the number of values that one may carry. */
const ROWS_AT_ONCE = 2_000

/** Keeps each planned bed's month and those it was chosen among, in the place of the plan before. */
async function storeMonths(tx: Tx, companyId: string, planId: string, plan: LevelPlan, asOfDay: string): Promise<void> {
  await tx.plannedRebed.deleteMany({ where: { companyId } })
  const day = (later: number) => dateOf(`${monthAfter(asOfDay, later)}-01`)
  const rows = [...plan.allowed].flatMap(([bedId, { first, last }]) => {
    const month = plan.months.get(bedId) ?? null
    const own = { companyId, id: newId(), planId, bedId }
    return month === null ? [] : [{ ...own, month: day(month), earliestMonth: day(first), latestMonth: day(last) }]
  })
  for (let i = 0; i < rows.length; i += ROWS_AT_ONCE) await tx.plannedRebed.createMany({ data: rows.slice(i, i + ROWS_AT_ONCE) })
}

/**
 * Spreads the rebeds to come over months: no bed waits past the owner's risk limit, the crews' hours are kept where at all possible. Beds past the limit already,
 * unseen for long, are counted apart: they want a call before a crew. Stored with the run it speaks of.
 */
export async function planRebeds({ companyId }: TaskPayloads['plan-rebeds']): Promise<void> {
  const facts = await inCompany(
    { companyId },
    async (tx) => {
      const settings = await tx.companySettings.findFirst({ where: { companyId }, select: { riskLimit: true } })
      if (!settings) return null
      const { today, timeZone } = await companyFacts(tx, companyId)
      return { settings, capacity: await crewCapacity(tx, companyId, today, timeZone, PLAN_MONTHS), ...(await readBeds(tx, companyId)) }
    },
    { timeoutMs: 120_000 },
  )
  if (!facts?.run) return
  const { beds, run, settings, capacity } = facts
  const planned = beds.filter((bed) => bed.chanceAlreadyFailed <= settings.riskLimit)
  const count = planned.length > LARGE_FIRM_BEDS ? LARGE_FIRM_MONTHS : PLAN_MONTHS
  const hoursEach = mean(planned.map((bed) => bed.crewHours))
  // Of people, where the capacity is of crews of two.
  const capacityHours = capacity.months.slice(0, count).map((one) => one.crewHours * jobKindFacts.rebed.usualCrew)
  const released = planned.map((bed) => ({ ...bed, firstMonth: bed.failedBy.findIndex((chance) => chance >= EARLY_CHANCE) }))
  const input: LevelInput = {
    beds: released.map((bed) => ({ ...bed, firstMonth: Math.max(0, bed.firstMonth) })),
    limits: { capacityHours, riskLimit: settings.riskLimit },
  }
  const plan = await runInWorkerThread<Result<LevelPlan>>({ ...ASIDE, companyId }, input)
  const rebedsPerMonth = hoursEach > 0 ? Math.round(mean(capacityHours) / hoursEach) : 0
  const limits = {
    ...settings,
    rebedsPerMonth,
    months: count,
    hoursEach,
    pastLimit: beds.length - planned.length,
    gap: plan.ok ? plan.value.gap : null,
  }
  const planId = newId()
  const result = plan.ok ? { months: asMonths(plan.value, planned, run.asOfDay, count) } : { refusal: plan.reason }
  await inCompany(
    { companyId },
    async (tx) => {
      await tx.forecastPlan.create({ data: { companyId, id: planId, runId: run.runId, finishedAt: now(), limits, ...result } })
      if (plan.ok) await storeMonths(tx, companyId, planId, plan.value, run.asOfDay)
      else await tx.plannedRebed.deleteMany({ where: { companyId } })
      await commandTools(tx, { companyId, personId: null }, 'forecasts.plan-rebeds', null).announce('forecast-plan', companyId)
    },
    { timeoutMs: 120_000 },
  )
}
