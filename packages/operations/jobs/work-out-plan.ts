import type { PlanAsked } from '@almanac/contract/plans'
import type { Tx } from '@almanac/database/client'
import { dayOf } from '@almanac/database/days'
import { inCompany } from '@almanac/database/in-company'
import { commandTools } from '@almanac/database/run-command'
import { now } from '@almanac/runtime/clock'
import { AppError } from '@almanac/runtime/errors'
import type { TaskPayloads } from '@almanac/runtime/queues'
import { runInWorkerThread } from '@almanac/runtime/run-in-worker-thread'
import { withDrives } from './drive-table.ts'
import { askedOf, mishapOf } from './mishap-of.ts'
import type { PlanAnswer, PlanInput } from './plan-aside.ts'
import { readBoard } from './read-board.ts'
import { openTravelDesk } from './travel-desk.ts'
import { workOutCrews } from './work-out-crews.ts'

const SEED = 1
/** How long the search may take: a dispatcher waits for it. A mishap is answered sooner. */
const WEEK_SECONDS = 8
const MISHAP_SECONDS = 2
/** The search stops by itself at its time; the limit is for one that does not. */
const ASIDE = { module: '@almanac/operations/jobs/plan-aside', seconds: 120, memoryMb: 2048 }

/** What the vehicle asked for instead carries; nothing without one. */
async function capacityOf(tx: Tx, companyId: string, asked: PlanAsked): Promise<PlanInput['capacity']> {
  if (asked.kind !== 'other-vehicle' || !asked.vehicleId) return { ft3: 0, lb: 0 }
  const vehicle = await tx.vehicle.findUnique({ where: { companyId_id: { companyId, id: asked.vehicleId } } })
  return { ft3: vehicle?.volumeFt3 ?? 0, lb: vehicle?.weightLb ?? 0 }
}

/** Stores what became of a plan; one that was stopped meanwhile stays as it is. */
async function endPlan(companyId: string, planId: string, data: { state: string; failure?: string; board?: object; proposal?: object }) {
  await inCompany({ companyId }, async (tx) => {
    const { count } = await tx.planProposal.updateMany({
      where: { companyId, id: planId, state: 'running' },
      data: { ...data, version: { increment: 1 } },
    })
    if (count > 0) await commandTools(tx, { companyId, personId: null }, 'jobs.work-out-plan', null).announce('plan', planId)
  })
}

/** Works a plan out in a process of its own and stores it in one piece. A plan that was stopped meanwhile, or is there already, is left as it is. */
export async function workOutPlan({ companyId, planId }: TaskPayloads['work-out-plan']): Promise<void> {
  const where = { companyId_id: { companyId, id: planId } }
  const read = await inCompany({ companyId }, async (tx) => {
    const plan = await tx.planProposal.findUnique({ where })
    if (plan?.state !== 'running') return null
    const asked = askedOf(plan.asked)
    if (asked.kind === 'crews') return { crewsOf: dayOf(plan.fromDay) }
    const days = { fromDay: dayOf(plan.fromDay), untilDay: dayOf(plan.untilDay), at: now(), ...mishapOf(asked) }
    return { crewsOf: undefined, asked, draft: await readBoard(tx, companyId, days), capacity: await capacityOf(tx, companyId, asked) }
  })
  if (!read) return
  if (read.crewsOf !== undefined) {
    const formed = await workOutCrews(companyId, read.crewsOf)
    const failed = 'faults' in formed
    await endPlan(companyId, planId, failed ? { state: 'failed', failure: formed.faults.join(' ') } : { state: 'ready', proposal: formed })
    return
  }
  const { asked, draft, capacity } = read
  const board = await withDrives(draft, await openTravelDesk({ companyId }, draft.timeZone))
  const input: PlanInput = {
    board,
    asked,
    capacity,
    left: draft.left,
    seed: SEED,
    seconds: asked.kind === 'week' ? WEEK_SECONDS : MISHAP_SECONDS,
  }
  const answer = await runInWorkerThread<PlanAnswer>({ ...ASIDE, companyId }, input)
  const plain = JSON.parse(JSON.stringify(answer)) as PlanAnswer
  const data =
    'faults' in plain
      ? { state: 'failed', failure: plain.faults.join(' ') }
      : { state: 'ready', board: plain.board as object, proposal: plain.proposal as object }
  await endPlan(companyId, planId, data)
}

/** Ends a plan that could not be worked out, with a sentence for whoever waits for it. */
export async function giveUpPlan({ companyId, planId }: TaskPayloads['work-out-plan'], error: unknown): Promise<void> {
  const sentence = 'Something went wrong on our side, several times in a row. Nothing was changed. Start another plan from the day sheets.'
  await endPlan(companyId, planId, { state: 'failed', failure: error instanceof AppError ? error.message : sentence })
}
