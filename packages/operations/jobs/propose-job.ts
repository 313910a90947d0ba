import type { ProposeJob } from '@almanac/contract/jobs'
import type { Tx } from '@almanac/database/client'
import { dateOf, dayOf } from '@almanac/database/days'
import type { Scope } from '@almanac/database/in-company'
import { BED_FACTS, bedFacts } from '@almanac/database/read/bed-facts'
import { type Command, runCommand } from '@almanac/database/run-command'
import { jobKindWords, renewsBed } from '@almanac/records/job-kind'
import { AppError, notFound } from '@almanac/runtime/errors'
import { newId } from '@almanac/runtime/ids'
import { dayIn } from '@almanac/units/calendar/zone-clock'
import { formatDay } from '@almanac/units/format-day'
import { companyFacts } from '../shared/company-facts.ts'
import { firmFigures } from '../shared/firm-figures.ts'
import type { WantedJob } from '../shared/propose-job.ts'
import { planForBed } from './plan-for-bed.ts'
import { refreshReminders } from './refresh-reminders.ts'
import { visitLengths } from './visit-lengths.ts'

type Wanted = WantedJob

/** The bed and softener named by the input, which must stand at its site; each 404 is the same as for one that does not exist. */
async function partsOf(tx: Tx, companyId: string, { siteId, softenerId, bedId }: Wanted) {
  const site = await tx.site.findUnique({ where: { companyId_id: { companyId, id: siteId } }, select: { id: true } })
  if (!site) throw notFound('site')
  const softener = softenerId ? await tx.softener.findFirst({ where: { companyId, id: softenerId, siteId }, select: { id: true } }) : null
  if (softenerId && !softener) throw notFound('softener')
  if (!bedId) return { softenerId: softener?.id ?? null, bed: null }
  const bed = await tx.bed.findFirst({
    where: { companyId, id: bedId, tank: { softener: { siteId, id: softenerId } } },
    include: { ...BED_FACTS, forecast: { select: { due10Day: true, due90Day: true } } },
  })
  if (!bed) throw notFound('bed')
  return { softenerId: bed.tank.softenerId, bed }
}

/** The job it follows, which must be one of the same site: work of several visits is done in one place. */
async function beforeOf(tx: Tx, companyId: string, { siteId, after }: Wanted) {
  if (!after) return {}
  const before = await tx.job.findUnique({ where: { companyId_id: { companyId, id: after.jobId } }, select: { siteId: true } })
  if (!before) throw notFound('job')
  if (before.siteId !== siteId)
    throw new AppError('invalid', 'The visit it follows is at another site. Nothing was added; choose one at this site.')
  return { afterJobId: after.jobId, afterLeastDays: after.leastDays }
}

/**
 * Proposes a job of any kind at a site, perhaps for one softener or bed. What is left out is filled in: length and crew by kind and
 * tank, a rebed's window from the forecast, an emergency due today.
 */
export const proposeJob = (scope: Scope & { personId: string }, input: ProposeJob) =>
  runCommand(scope, 'jobs.propose-job', input, (tx, command) => proposeIn(tx, command, input))

/** The same inside another command's transaction: a call that asks for a job. */
export async function proposeIn(tx: Tx, command: Command, input: Wanted) {
  const { companyId } = command
  const { softenerId, bed } = await partsOf(tx, companyId, input)
  const renews = renewsBed(input.kind)
  if (renews && !bed)
    throw new AppError(
      'invalid',
      `A ${jobKindWords[input.kind].toLowerCase()} is for one bed. Nothing was added; choose the bed, or add an inspection first.`,
    )
  if (renews && bed && (bed.endedLatest !== null || bed.archivedAt !== null))
    throw new AppError('conflict', 'This bed is no longer in service. Nothing was added; open the tank to see the present one.')
  const display = await companyFacts(tx, companyId)
  const forecast = renews ? bed?.forecast : null
  const today = input.kind === 'emergency' ? dayIn(display.timeZone, command.at) : null
  const dueEarliest = input.dueEarliest ?? today ?? dayOf(forecast?.due10Day ?? null)
  const dueLatest = input.dueLatest ?? today ?? dayOf(forecast?.due90Day ?? null)
  if (dueEarliest && dueLatest && dueEarliest > dueLatest)
    throw new AppError(
      'invalid',
      `The job can’t be due from ${formatDay(dueEarliest, display)} and by ${formatDay(dueLatest, display)}. Nothing was added; swap the days.`,
    )
  const plan = planForBed(
    input.kind,
    bed && bedFacts(bed),
    display,
    await firmFigures(tx, companyId),
    await visitLengths(tx, companyId, command.at),
  )
  const after = await beforeOf(tx, companyId, input)
  const jobId = newId()
  await tx.job.create({
    data: {
      ...{ companyId, id: jobId, siteId: input.siteId, softenerId, bedId: bed?.id ?? null, kind: input.kind, state: 'proposed' },
      dueEarliest: dateOf(dueEarliest),
      dueLatest: dateOf(dueLatest),
      minutes: input.minutes ?? plan.minutes,
      crewSize: input.crewSize ?? plan.crewSize,
      needsVehicle: input.needsVehicle ?? null,
      notes: input.notes?.trim() || null,
      ...(input.askedFor ? { askedFor: input.askedFor } : {}),
      ...after,
      createdAt: command.at,
    },
  })
  await command.audit('proposed', 'job', jobId, { kind: input.kind, bedId: bed?.id ?? null, dueEarliest, dueLatest })
  await command.announce('job', jobId, 1)
  await refreshReminders(command, { kind: input.kind, bedId: bed?.id ?? null })
  return { jobId, version: 1, state: 'proposed' as const }
}
