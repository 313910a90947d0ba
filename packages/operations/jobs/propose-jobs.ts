import type { ProposeJobs as ProposeJobsInput } from '@almanac/contract/jobs'
import type { Tx } from '@almanac/database/client'
import type { Scope } from '@almanac/database/in-company'
import { type Command, runCommand } from '@almanac/database/run-command'
import { lockRows } from '@almanac/database/sql/lock-rows'
import { openJobStates } from '@almanac/records/job-state'
import { notFound } from '@almanac/runtime/errors'
import { newId } from '@almanac/runtime/ids'
import type { FirmFigures } from '@almanac/softener/firm/firm-figures'
import type { UnitSystem } from '@almanac/units/unit-system'
import type * as z from 'zod'
import { companyFacts } from '../shared/company-facts.ts'
import { firmFigures } from '../shared/firm-figures.ts'
import { planForBed } from './plan-for-bed.ts'
import { refreshReminders } from './refresh-reminders.ts'
import { visitLengths } from './visit-lengths.ts'

export type ProposeJobs = z.infer<typeof ProposeJobsInput>

type Result =
  | { bedId: string; status: 'proposed'; jobId: string }
  | { bedId: string; status: 'refused'; reason: string; jobId: string | null }

/** Beds locked in id order, so that two people who propose the same beds at once get one job each and one refusal each. */
async function lockBeds(tx: Tx, companyId: string, bedIds: string[]) {
  await lockRows(tx, companyId, 'bed', bedIds)
  const beds = await tx.bed.findMany({
    where: { companyId, id: { in: bedIds } },
    include: {
      tank: { include: { softener: { select: { siteId: true } } } },
      forecast: { select: { due10Day: true, due90Day: true } },
      jobs: { where: { kind: 'rebed', state: { in: [...openJobStates] } }, select: { id: true } },
    },
  })
  return new Map(beds.map((bed) => [bed.id, bed]))
}

type LockedBed = Awaited<ReturnType<typeof lockBeds>> extends Map<string, infer B> ? B : never

const refused = (bedId: string, reason: string, jobId: string | null = null): Result => ({ bedId, status: 'refused', reason, jobId })

type Known = { unitSystem: UnitSystem; figures: FirmFigures; lengthOf: Awaited<ReturnType<typeof visitLengths>> }

async function proposeRebed(tx: Tx, command: Command, bed: LockedBed, { unitSystem, figures, lengthOf }: Known): Promise<Result> {
  const [open] = bed.jobs
  if (open) return refused(bed.id, 'A rebed for this bed is already open.', open.id)
  if (bed.endedLatest !== null || bed.archivedAt !== null) return refused(bed.id, 'This bed is no longer in service.')
  if (!bed.tank.softener || !bed.tank.softenerId)
    return refused(bed.id, 'This tank stands in the workshop; there is no site to send a crew to.')
  const jobId = newId()
  await tx.job.create({
    data: {
      companyId: command.companyId,
      id: jobId,
      siteId: bed.tank.softener.siteId,
      softenerId: bed.tank.softenerId,
      bedId: bed.id,
      kind: 'rebed',
      state: 'proposed',
      dueEarliest: bed.forecast?.due10Day ?? null,
      dueLatest: bed.forecast?.due90Day ?? null,
      createdAt: command.at,
      ...planForBed('rebed', bed, unitSystem, figures, lengthOf),
    },
  })
  await command.audit('proposed', 'job', jobId, { kind: 'rebed', bedId: bed.id })
  await command.announce('job', jobId, 1)
  return { bedId: bed.id, status: 'proposed', jobId }
}

/**
 * Proposes a rebed for each of several beds, with the due window of its forecast (from the day by which 10 of 100 such beds fail to that by
 * which 90 do), length and crew. Answers per bed: one that has an open rebed already is refused by itself and the others go on. A bed
 * that is not there is a 404 for all of them, and nothing is added.
 */
export async function proposeJobs(scope: Scope & { personId: string }, input: ProposeJobs): Promise<{ results: Result[] }> {
  return runCommand(scope, 'jobs.propose-jobs', input, async (tx, command) => {
    const wanted = input.beds.map(({ bedId }) => bedId)
    const beds = await lockBeds(tx, scope.companyId, [...new Set(wanted)])
    if (wanted.some((id) => !beds.has(id))) throw notFound('bed')
    const { unitSystem } = await companyFacts(tx, scope.companyId)
    const figures = await firmFigures(tx, scope.companyId)
    const known = { unitSystem, figures, lengthOf: await visitLengths(tx, scope.companyId, command.at) }
    const results: Result[] = []
    for (const bed of beds.values()) results.push(await proposeRebed(tx, command, bed, known))
    await refreshReminders(command, { kind: 'rebed', bedId: wanted[0] ?? null })
    return { results: [...new Set(wanted)].flatMap((id) => results.filter((one) => one.bedId === id)) }
  })
}
