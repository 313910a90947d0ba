import type { CloseOutCommand, CloseOutInput } from '@almanac/contract/visits'
import type { Tx } from '@almanac/database/client'
import { dateOf } from '@almanac/database/days'
import type { Scope } from '@almanac/database/in-company'
import { type Command, runCommand } from '@almanac/database/run-command'
import type { JobKind } from '@almanac/records/job-kind'
import { AppError, notFound } from '@almanac/runtime/errors'
import type { CloseOutWords } from '@almanac/service-rules/close-out/close-out-words'
import { type CloseOutContext, missingForCloseOut } from '@almanac/service-rules/close-out/completeness'
import { outcomeFacts } from '@almanac/service-rules/jobs/visit-outcomes'
import { dayIn } from '@almanac/units/calendar/zone-clock'
import { wordsIn } from '@almanac/words/words-in'
import { companyFacts } from '../shared/company-facts.ts'
import { firmFigures } from '../shared/firm-figures.ts'
import { moveStock } from '../shared/move-stock.ts'
import { recordFindings } from '../shared/record-findings.ts'
import { endReservation } from '../shared/reserve-kit.ts'
import { applyBedEffect } from './apply-bed-effect.ts'
import { beadConditionOf } from './bead-condition.ts'
import { changeState } from './change-state.ts'
import { type LockedJob, lockJob, stepOf } from './lock-job.ts'
import { roomOfTank } from './room-of-tank.ts'

type CloseOut = { visitId: string; jobState: string; endedBedId: string | null; newBedId: string | null }

/** The visit's job, locked in the order in which every use case locks, and when the visit was booked for. */
async function lockOpenVisit(tx: Tx, companyId: string, visitId: string): Promise<{ job: LockedJob; startsAt: Date }> {
  const where = { companyId_id: { companyId, id: visitId } }
  const named = await tx.visit.findUnique({ where, select: { jobId: true } })
  if (!named) throw notFound('visit')
  const job = await lockJob(tx, companyId, named.jobId)
  const { state, startsAt } = await tx.visit.findUniqueOrThrow({ where, select: { state: true, startsAt: true } })
  if (state === 'closed') throw new AppError('conflict', (locale) => wordsIn(locale, 'refusal')('closedAlready'), { state })
  if (state === 'called-off') throw new AppError('conflict', (locale) => wordsIn(locale, 'refusal')('calledOff'), { state })
  return { job, startsAt }
}

type Judged = Omit<CloseOutContext, keyof CloseOutWords>

/** What a record lacks, in the language of a locale; amounts and days stay those of its region. */
function missingIn(record: CloseOutInput, job: LockedJob, judged: Judged, locale: string): string[] {
  const spoken = {
    words: wordsIn(locale, 'lacking'),
    outcomes: wordsIn(locale, 'outcome'),
    stops: wordsIn(locale, 'stop'),
    amounts: wordsIn(locale, 'amount'),
    amountNames: wordsIn(locale, 'amountName'),
  }
  const display = { ...judged.display, locale }
  return missingForCloseOut({ ...record, jobKind: job.kind as JobKind }, { ...judged, ...spoken, display })
}

function checkRecord(record: CloseOutInput, job: LockedJob, judged: Judged): void {
  if (record.jobKind !== job.kind)
    throw new AppError('invalid', (locale) =>
      wordsIn(locale, 'refusal')('otherKind', { kind: wordsIn(locale, 'jobKind')(job.kind as JobKind) }),
    )
  const missing = missingIn(record, job, judged, judged.display.locale)
  if (missing.length > 0)
    throw new AppError(
      'invalid',
      (locale) => wordsIn(locale, 'refusal')('incomplete', { missing: missingIn(record, job, judged, locale).join(' ') }),
      { missing },
    )
}

async function closeRows(tx: Tx, command: Command, job: LockedJob, record: CloseOutInput): Promise<string> {
  const { companyId } = command
  const { outcome, checks, measurements, partsUsed, oldBed, newBed, workDay, startedAt, finishedAt, hardnessReason } = record
  const visit = await tx.visit.update({
    where: { companyId_id: { companyId, id: record.visitId } },
    data: {
      state: 'closed',
      outcome,
      closeOut: { checks, measurements, partsUsed, oldBed, newBed, workDay, startedAt, finishedAt, hardnessReason },
      notes: [record.reason, record.notes].filter((one) => one.trim()).join('\n\n') || null,
      closedAt: command.at,
      closedBy: command.personId,
      version: { increment: 1 },
    },
  })
  const event = outcomeFacts[outcome].jobEvent
  const state = stepOf(job, event)
  await changeState(tx, command, job, { state, stateReason: event === 'return' ? record.reason : null })
  if (state === 'closed') await tx.job.update({ where: { companyId_id: { companyId, id: job.id } }, data: { closedDay: dateOf(workDay) } })
  await command.audit('closed out', 'visit', visit.id, { jobId: job.id, outcome, workDay })
  await command.announce('visit', visit.id, visit.version)
  await command.announce('site', job.siteId)
  return state
}

/**
 * Finishes a visit in one transaction: visit and job closed or returned, the old bed ended with its cause and the new one begun, tests and parts
 * recorded, forecasts and reminders asked for again. What was measured and used is a fact and lands whatever the shelf says. Refuses an incomplete
 * record by the same rules that the tablet shows, a visit that was called off, and a second close-out; the same command sent twice applies once.
 */
export async function closeOutVisit(scope: Scope & { personId: string }, input: CloseOutCommand): Promise<CloseOut> {
  return runCommand(scope, 'jobs.close-out-visit', input, async (tx, command) => {
    const { companyId } = scope
    const { record } = input
    const { job, startsAt } = await lockOpenVisit(tx, companyId, record.visitId)
    const { today: _, ...display } = await companyFacts(tx, companyId)
    const { timeZone } = display
    // A job may be written down after its work, with a visit booked for a day gone by.
    const known = job.createdAt < startsAt ? job.createdAt : startsAt
    checkRecord(record, job, {
      outletLimitGpg: (await firmFigures(tx, companyId)).outletLimitGpg,
      display,
      today: dayIn(timeZone, command.at),
      notBefore: dayIn(timeZone, known),
      tank: await roomOfTank(tx, { companyId, bedId: job.bedId, softenerId: job.softenerId }, display),
    })
    const place = { visitId: record.visitId, siteId: job.siteId, softenerId: job.softenerId, bedId: job.bedId, day: record.workDay }
    await recordFindings(tx, command, place, record.measurements, beadConditionOf(record))
    const beds = await applyBedEffect(tx, command, job, record)
    await moveStock(
      tx,
      command,
      record.partsUsed.flatMap((part) =>
        part.stockItemId
          ? [{ stockItemId: part.stockItemId, quantity: -part.quantity, reason: 'used' as const, visitId: record.visitId }]
          : [],
      ),
    )
    await endReservation(tx, command, record.visitId, record.outcome === 'done' ? 'used' : 'returned')
    const jobState = await closeRows(tx, command, job, record)
    return { visitId: record.visitId, jobState, ...beds }
  })
}
