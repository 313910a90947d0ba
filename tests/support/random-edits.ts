import { inCompany } from '@almanac/database/in-company'
import { bookVisit } from '@almanac/operations/jobs/book-visit'
import { callOffJob } from '@almanac/operations/jobs/call-off-job'
import { callOffVisit } from '@almanac/operations/jobs/call-off-visit'
import { changeDaySheet } from '@almanac/operations/jobs/change-day-sheet'
import { changeJob } from '@almanac/operations/jobs/change-job'
import { holdJob } from '@almanac/operations/jobs/hold-job'
import { moveVisit } from '@almanac/operations/jobs/move-visit'
import { promiseWindow } from '@almanac/operations/jobs/promise-window'
import { resumeJob } from '@almanac/operations/jobs/resume-job'
import type { Firm } from '@almanac/operations/jobs/test-firm'
import { newId } from '@almanac/runtime/ids'
import { clockIn } from '@almanac/units/calendar/zone-clock'

/** A seeded stream of whole numbers below `n`: mulberry32, public domain, by T. Ettinger. */
export function drawFrom(seed: number): (n: number) => number {
  let a = seed >>> 0
  return (n) => {
    a = (a + 0x6d2b79f5) >>> 0
    let t = Math.imul(a ^ (a >>> 15), 1 | a)
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t
    return ((t ^ (t >>> 14)) >>> 0) % n
  }
}

const ZONE = 'America/Phoenix'
const EDITS = [
  'book',
  'book',
  'move',
  'move',
  'promise',
  'promise',
  'take-off',
  'undo',
  'hold',
  'call-off',
  'resume',
  'hours',
  'length',
] as const
const ALL = ['past', 'outside-hours', 'promise', 'crew'] as const
const clock = (quarter: number) => `${String(Math.floor(quarter / 4)).padStart(2, '0')}:${String((quarter % 4) * 15).padStart(2, '0')}`

export type Undone = { jobId: string; crewDayId: string; at: string }

/**
 * One random edit of a board as dispatchers make them, everything unusual confirmed. Answers what was tried; a refusal (somebody is busy, a state does not
 * allow it) is an answer too.
 */
export async function editAtRandom(firm: Firm, sheets: readonly string[], draw: (n: number) => number, undone: Undone[]): Promise<string> {
  const { companyId } = firm
  const id = { commandId: newId() }
  const pick = <T>(all: readonly T[]): T | undefined => all[draw(all.length || 1)]
  const what = pick(EDITS) ?? 'book'
  const { jobs, visits } = await inCompany(firm, async (tx) => ({
    jobs: await tx.job.findMany({ where: { companyId }, orderBy: { id: 'asc' } }),
    visits: await tx.visit.findMany({ where: { companyId, state: 'booked' }, orderBy: { id: 'asc' } }),
  }))
  const inState = (state: string) => pick(jobs.filter((one) => one.state === state))
  const at = clock(32 + draw(32))
  const crewDayId = pick(sheets) ?? ''
  const visit = pick(visits)
  try {
    if (what === 'book' || what === 'undo') {
      const last = what === 'undo' ? undone.pop() : undefined
      const job = last ? jobs.find((one) => one.id === last.jobId) : inState('proposed')
      const place = last ?? { crewDayId, at }
      if (job)
        await bookVisit(firm, {
          ...id,
          jobId: job.id,
          jobVersion: job.version,
          crewDayId: place.crewDayId,
          at: place.at,
          confirmed: [...ALL],
        })
    } else if (what === 'hold' || what === 'call-off') {
      const job = pick(jobs.filter((one) => one.state === 'booked' || one.state === 'proposed'))
      const told = draw(2) === 0
      const body = { ...id, jobId: job?.id ?? '', version: job?.version ?? 1, reason: 'at random', told }
      if (job && draw(3) === 0) await (what === 'hold' ? holdJob(firm, body) : callOffJob(firm, body))
    } else if (what === 'resume') {
      const job = inState('held') ?? inState('called-off')
      if (job) await resumeJob(firm, { ...id, jobId: job.id, version: job.version })
    } else if (visit && what === 'move')
      await moveVisit(firm, { ...id, visitId: visit.id, version: visit.version, crewDayId, at, confirmed: [...ALL] })
    else if (visit && what === 'take-off') {
      await callOffVisit(firm, { ...id, visitId: visit.id, version: visit.version, confirmed: ['promise'] })
      undone.push({ jobId: visit.jobId, crewDayId: visit.crewDayId, at: clockIn(ZONE, visit.startsAt) })
    } else if (what === 'hours') {
      const sheet = await inCompany(firm, (tx) =>
        tx.crewDay.findUnique({ where: { companyId_id: { companyId, id: crewDayId } }, include: { members: true } }),
      )
      if (sheet) {
        const { version, name, vehicleId, members } = sheet
        const crew = { name, vehicleId, colleagueIds: members.map((one) => one.colleagueId) }
        const until = clock(52 + draw(20))
        await changeDaySheet(firm, { ...id, ...crew, crewDayId, version, from: '08:00', until, notes: null, confirmed: [...ALL] })
      }
    } else if (visit && what === 'length') {
      const job = jobs.find((one) => one.id === visit.jobId)
      const rest = { crewSize: 1, needsVehicle: null, dueEarliest: null, dueLatest: null, notes: null, confirmed: [...ALL] }
      if (job) await changeJob(firm, { ...id, ...rest, jobId: job.id, version: job.version, minutes: 30 + 15 * draw(8) })
    } else if (visit && what === 'promise') {
      const start = 32 + draw(28)
      await promiseWindow(firm, { ...id, visitId: visit.id, version: visit.version, from: clock(start), until: clock(start + 8) })
    }
    return what
  } catch (error) {
    return `${what}: ${error instanceof Error ? error.message : error}`
  }
}
