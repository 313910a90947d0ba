import type { Tx } from '@almanac/database/client'
import { bedFacts, TANK_FACTS } from '@almanac/database/read/bed-facts'
import type { Command } from '@almanac/database/run-command'
import { lockRows } from '@almanac/database/sql/lock-rows'
import { bedRenewingKinds } from '@almanac/records/job-kind'
import { openJobStates } from '@almanac/records/job-state'
import { notFound } from '@almanac/runtime/errors'
import { newId } from '@almanac/runtime/ids'
import type { FirmFigures } from '@almanac/softener/firm/firm-figures'
import type { AmountDisplay } from '@almanac/units/display'
import { companyFacts } from '../shared/company-facts.ts'
import { firmFigures } from '../shared/firm-figures.ts'
import { planForBed } from './plan-for-bed.ts'
import { refreshReminders } from './refresh-reminders.ts'
import { visitLengths } from './visit-lengths.ts'

export type Proposed =
  | { bedId: string; status: 'proposed'; jobId: string }
  | { bedId: string; status: 'refused'; reason: string; jobId: string | null }

/** Beds locked in id order, so that two people who propose the same beds at once get one job each and one refusal each. */
async function lockBeds(tx: Tx, companyId: string, bedIds: string[]) {
  await lockRows(tx, companyId, 'bed', bedIds)
  const beds = await tx.bed.findMany({
    where: { companyId, id: { in: bedIds } },
    include: {
      tank: { include: { ...TANK_FACTS.include, softener: { select: { ...TANK_FACTS.include.softener.select, siteId: true } } } },
      forecast: { select: { due10Day: true, due90Day: true } },
      jobs: { where: { kind: { in: [...bedRenewingKinds] }, state: { in: [...openJobStates] } }, select: { id: true } },
    },
  })
  return new Map(beds.map((bed) => [bed.id, bed]))
}

type LockedBed = Awaited<ReturnType<typeof lockBeds>> extends Map<string, infer B> ? B : never

const refused = (bedId: string, reason: string, jobId: string | null = null): Proposed => ({ bedId, status: 'refused', reason, jobId })

/** First and last day in which a job is to be done; null where nothing says. */
export type DueDays = { dueEarliest: Date | null; dueLatest: Date | null }

type Known = { display: AmountDisplay; figures: FirmFigures; lengthOf: Awaited<ReturnType<typeof visitLengths>> }

async function proposeRebed(
  tx: Tx,
  command: Command,
  bed: LockedBed,
  days: DueDays,
  { display, figures, lengthOf }: Known,
): Promise<Proposed> {
  const [open] = bed.jobs
  if (open) return refused(bed.id, 'A rebed for this bed is already open.', open.id)
  if (bed.endedLatest !== null || bed.archivedAt !== null) return refused(bed.id, 'This bed is no longer in service.')
  if (!bed.tank.softener || !bed.tank.softenerId) return refused(bed.id, 'This tank is in the workshop; there’s no site to send a crew to.')
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
      ...days,
      createdAt: command.at,
      ...planForBed('rebed', bedFacts(bed), display, figures, lengthOf),
    },
  })
  await command.audit('proposed', 'job', jobId, { kind: 'rebed', bedId: bed.id })
  await command.announce('job', jobId, 1)
  return { bedId: bed.id, status: 'proposed', jobId }
}

/**
 * Proposes a rebed for each of several beds, with the days that `daysOf` gives it, length and crew. Answers per bed, in the order asked: one that has an open rebed
 * already is refused by itself and the others go on. A bed that is not there is a 404 for all of them, and nothing is added.
 */
export async function proposeRebeds(
  tx: Tx,
  command: Command,
  bedIds: readonly string[],
  daysOf: (bed: LockedBed) => DueDays,
): Promise<Proposed[]> {
  const wanted = [...new Set(bedIds)]
  const beds = await lockBeds(tx, command.companyId, wanted)
  if (wanted.some((id) => !beds.has(id))) throw notFound('bed')
  const display = await companyFacts(tx, command.companyId)
  const figures = await firmFigures(tx, command.companyId)
  const known = { display, figures, lengthOf: await visitLengths(tx, command.companyId, command.at) }
  const results: Proposed[] = []
  for (const bed of beds.values()) results.push(await proposeRebed(tx, command, bed, daysOf(bed), known))
  await refreshReminders(command, { kind: 'rebed', bedId: wanted[0] ?? null })
  return wanted.flatMap((id) => results.filter((one) => one.bedId === id))
}
