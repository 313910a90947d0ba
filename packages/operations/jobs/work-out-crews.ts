import { inCompany } from '@almanac/database/in-company'
import { now } from '@almanac/runtime/clock'
import { runInWorkerThread } from '@almanac/runtime/run-in-worker-thread'
import { readCrewDay } from './crew-day-to-form.ts'
import type { CrewsAnswer, CrewsInput } from './crews-aside.ts'
import { withDrives } from './drive-table.ts'
import { openTravelDesk } from './travel-desk.ts'

const SEED = 1
/** A dispatcher waits for it. */
const SECONDS = 6
/** The search stops by itself at its time; the limit is for one that does not. */
const ASIDE = { module: '@almanac/operations/jobs/crews-aside', seconds: 120, memoryMb: 2048 }

/** Who goes with whom on a day, or why nobody can be sent: in a process of its own. */
export async function workOutCrews(companyId: string, day: string): Promise<CrewsAnswer> {
  const { draft, form } = await inCompany({ companyId }, (tx) => readCrewDay(tx, companyId, day, now()))
  if (form.hands.length === 0) return { faults: ['Everyone who works that day is on a sheet already, or nobody works then.'] }
  if (form.vans.length === 0) return { faults: ['No vehicle is free that day: each is on a sheet, or out of service.'] }
  const board = await withDrives(draft, await openTravelDesk({ companyId }, draft.timeZone))
  const input: CrewsInput = { day: { ...form, board }, seed: SEED, seconds: SECONDS }
  return runInWorkerThread<CrewsAnswer>({ ...ASIDE, companyId }, input)
}
