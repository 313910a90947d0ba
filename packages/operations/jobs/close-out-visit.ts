import type { CloseOutCommand, CloseOutInput } from '@almanac/contract/visits'
import type { Tx } from '@almanac/database/client'
import { dateOf } from '@almanac/database/days'
import type { Scope } from '@almanac/database/in-company'
import { readEmptied } from '@almanac/database/read/emptied-tank'
import { type Command, runCommand } from '@almanac/database/run-command'
import { type JobKind, renewsBed } from '@almanac/records/job-kind'
import type { JobState } from '@almanac/records/job-state'
import { AppError } from '@almanac/runtime/errors'
import type { CloseOutWords } from '@almanac/service-rules/close-out/close-out-words'
import { type CloseOutContext, missingForCloseOut } from '@almanac/service-rules/close-out/completeness'
import { stateAfterFact } from '@almanac/service-rules/jobs/job-states'
import { outcomeFacts } from '@almanac/service-rules/jobs/visit-outcomes'
import { dayIn } from '@almanac/units/calendar/zone-clock'
import { wordsIn } from '@almanac/words/words-in'
import { companyFacts } from '../shared/company-facts.ts'
import { firmFigures } from '../shared/firm-figures.ts'
import { giveMaterials, releaseMaterials } from '../shared/give-materials.ts'
import { moveStock } from '../shared/move-stock.ts'
import { noteTurnDone } from '../shared/note-turn-done.ts'
import { recordFindings } from '../shared/record-findings.ts'
import { endReservation } from '../shared/reserve-kit.ts'
import { applyBedEffect } from './apply-bed-effect.ts'
import { beadConditionOf } from './bead-condition.ts'
import { changeState } from './change-state.ts'
import { type LockedJob, lockVisit, stepOf } from './lock-job.ts'
import { proposeIn } from './propose-job.ts'
import { roomOfTank } from './room-of-tank.ts'
import { takeJobOffSheet } from './take-off-sheet.ts'

type CloseOut = { visitId: string; jobState: string; endedBedId: string | null; newBedId: string | null }

/** The visit's locked job, and when the visit was booked for; a visit that was called off only for what is a fact. */
async function lockOpenVisit(tx: Tx, companyId: string, visitId: string, asFact: boolean) {
  const { visit, job } = await lockVisit(tx, companyId, visitId)
  const { state, startsAt } = visit
  if (state === 'closed') throw new AppError('conflict', (locale) => wordsIn(locale, 'refusal')('closedAlready'), { state })
  const calledOff = state === 'called-off'
  if (calledOff && !asFact) throw new AppError('conflict', (locale) => wordsIn(locale, 'refusal')('calledOff'), { state })
  return { job, startsAt, calledOff }
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

/** What becomes of the job: its next state, where the visit was called off by what is a fact; another visit that this leaves without work comes off its sheet. */
async function stateAfter(tx: Tx, command: Command, job: LockedJob, event: 'close' | 'return', calledOff: boolean): Promise<JobState> {
  if (!calledOff) return stepOf(job, event)
  const state = stateAfterFact(job.state as JobState, event)
  if (state === null) throw new AppError('conflict', (locale) => wordsIn(locale, 'refusal')('doneByOthers'), { state: job.state })
  if (state === 'closed') await takeJobOffSheet(tx, command, job.id, false)
  return state
}

type Closing = { job: LockedJob; calledOff: boolean }

async function closeRows(tx: Tx, command: Command, { job, calledOff }: Closing, record: CloseOutInput): Promise<string> {
  const { companyId } = command
  const { outcome, checks, measurements, partsUsed, oldBed, newBed, workDay, startedAt, finishedAt, hardnessReason, beside } = record
  const visit = await tx.visit.update({
    where: { companyId_id: { companyId, id: record.visitId } },
    data: {
      state: 'closed',
      outcome,
      closeOut: {
        checks,
        measurements,
        partsUsed,
        oldBed,
        newBed,
        workDay,
        startedAt,
        finishedAt,
        hardnessReason,
        ...(beside && { beside }),
      },
      notes: [record.reason, record.notes].filter((one) => one.trim()).join('\n\n') || null,
      closedAt: command.at,
      closedBy: command.personId,
      version: { increment: 1 },
    },
  })
  const event = outcomeFacts[outcome].jobEvent
  const state = await stateAfter(tx, command, job, event, calledOff)
  await changeState(tx, command, job, { state, stateReason: event === 'return' ? record.reason : null })
  if (state === 'closed') await tx.job.update({ where: { companyId_id: { companyId, id: job.id } }, data: { closedDay: dateOf(workDay) } })
  if (state === 'closed' && outcome === 'done') await noteTurnDone(tx, command, job.id, workDay)
  await command.audit('closed out', 'visit', visit.id, { jobId: job.id, outcome, workDay })
  await command.announce('visit', visit.id, visit.version)
  await command.announce('site', job.siteId)
  return state
}

/** Another visit that the crew asks for, as a job of its own. A rebed or an exchange is of the bed that is in the tank now; where there is none somebody has to look first. */
async function askAgain(
  tx: Tx,
  command: Command,
  job: LockedJob,
  { beside }: CloseOutInput,
  beds: Pick<CloseOut, 'endedBedId' | 'newBedId'>,
) {
  if (!beside?.followUp) return
  const { kind, what } = beside.followUp
  const bedId = beds.newBedId ?? (beds.endedBedId === null ? job.bedId : null)
  const { siteId, softenerId } = job
  await proposeIn(tx, command, {
    ...{ siteId, softenerId: softenerId ?? undefined, bedId: bedId ?? undefined },
    ...{ kind: renewsBed(kind) && bedId === null ? 'inspection' : kind, notes: what },
  })
}

/**
 * Finishes a visit inside a command: visit and job closed or returned, the old bed ended with its cause and the new one begun, tests and parts recorded, forecasts
 * and reminders asked for again. What was measured and used is a fact and lands whatever the shelf says. Refuses an incomplete record by the same rules that the
 * tablet shows, and a second close-out; a visit that was called off too, unless it is told as a fact. `calledOff` says that it was.
 */
export async function noteCloseOut(
  tx: Tx,
  command: Command,
  record: CloseOutInput,
  { asFact }: { asFact: boolean },
): Promise<CloseOut & { calledOff: boolean }> {
  const { companyId } = command
  const { job, startsAt, calledOff } = await lockOpenVisit(tx, companyId, record.visitId, asFact)
  const { today: _, ...display } = await companyFacts(tx, companyId)
  const { timeZone } = display
  // A job may be written down after its work, with a visit booked for a day gone by.
  const known = job.createdAt < startsAt ? job.createdAt : startsAt
  checkRecord(record, job, {
    outletLimitGpg: (await firmFigures(tx, companyId)).outletLimitGpg,
    display,
    today: dayIn(timeZone, command.at),
    notBefore: dayIn(timeZone, known),
    tank: await roomOfTank(tx, { companyId, bedId: job.bedId, softenerId: job.softenerId }, { display, checks: record.checks }),
    emptied: (await readEmptied(tx, companyId, job.bedId)) !== null,
  })
  const place = { visitId: record.visitId, siteId: job.siteId, softenerId: job.softenerId, bedId: job.bedId, day: record.workDay }
  await recordFindings(tx, command, place, record.measurements, beadConditionOf(record))
  const beds = await applyBedEffect(tx, command, job, record, display.locale)
  await moveStock(
    tx,
    command,
    record.partsUsed.flatMap((part) =>
      part.stockItemId
        ? [{ stockItemId: part.stockItemId, quantity: -part.quantity, reason: 'used' as const, visitId: record.visitId }]
        : [],
    ),
  )
  const done = record.outcome === 'done'
  await endReservation(tx, command, record.visitId, done ? 'used' : 'returned')
  if (done) await giveMaterials(tx, command, { jobId: job.id, way: 'delivered', visitId: record.visitId })
  else await releaseMaterials(tx, command, job.id, outcomeFacts[record.outcome].jobEvent === 'close' ? 'called-off' : 'reserved')
  const jobState = await closeRows(tx, command, { job, calledOff }, record)
  await askAgain(tx, command, job, record, beds)
  return { visitId: record.visitId, jobState, ...beds, calledOff }
}

/** Finishes a visit (`noteCloseOut`) in one transaction; the same command sent twice applies once. Pages of the release before send this; tablets send it by `takeFieldCommand`. */
export async function closeOutVisit(scope: Scope & { personId: string }, input: CloseOutCommand): Promise<CloseOut> {
  return runCommand(scope, 'jobs.close-out-visit', input, async (tx, command) => {
    const { calledOff: _, ...closed } = await noteCloseOut(tx, command, input.record, { asFact: false })
    return closed
  })
}
