import type { CloseOutInput } from '@almanac/contract/visits'
import type { Tx } from '@almanac/database/client'
import { dateOf } from '@almanac/database/days'
import type { Command } from '@almanac/database/run-command'
import { sourceOn } from '@almanac/records/fact-source'
import type { JobKind } from '@almanac/records/job-kind'
import { AppError } from '@almanac/runtime/errors'
import { bedEffectOf } from '@almanac/service-rules/jobs/visit-outcomes'
import { readAmount } from '@almanac/units/read-amount'
import { enteredOf } from '../shared/check-amounts.ts'
import { endAndBeginBed, type NewBed } from '../shared/end-and-begin-bed.ts'
import { markBedsWorking } from '../shared/mark-beds-working.ts'
import type { LockedJob } from './lock-job.ts'

type Beds = { endedBedId: string | null; newBedId: string | null }
const NONE: Beds = { endedBedId: null, newBedId: null }

/** The tank the job is about: its bed's, or the softener's only one. */
async function tankOf(tx: Tx, companyId: string, job: LockedJob): Promise<string> {
  if (job.bedId) {
    const bed = await tx.bed.findUniqueOrThrow({ where: { companyId_id: { companyId, id: job.bedId } }, select: { tankId: true } })
    return bed.tankId
  }
  const tanks = job.softenerId
    ? await tx.tank.findMany({ where: { companyId, softenerId: job.softenerId, archivedAt: null }, select: { id: true } })
    : []
  const [only, ...others] = tanks
  if (only && others.length === 0) return only.id
  throw new AppError(
    'invalid',
    'This job doesn’t say which tank it’s for, so we couldn’t record the beds. Nothing was saved; ask the office to add the bed to the job, then send again.',
  )
}

function newBedOf({ newBed, workDay }: CloseOutInput): NewBed | null {
  if (!newBed) return null
  const { resinKind, volumeFt3, gravelLb, tubeCutIn, enteredVolume, why } = newBed
  const insisted = {
    volume: enteredVolume,
    gravel: why?.gravel ? { value: gravelLb, unit: 'lb' } : null,
    tubeCut: why?.tubeCut && tubeCutIn !== null ? { value: tubeCutIn, unit: 'in' } : null,
  }
  return { resinKind, volumeFt3, gravelLb, tubeCutIn, entered: enteredOf(insisted, why), from: sourceOn('close-out', workDay) }
}

/** The length of the tube that came out, in the words of the crew's answer, as typed in the company's way; null where none was measured. */
function oldTubeIn({ checks }: CloseOutInput, locale: string): number | null {
  const reading = readAmount('tube', checks.find((one) => one.stepId === 'old-tube-length-in')?.note ?? '', { locale })
  return reading.state === 'read' ? reading.value : null
}

/** Does to the beds what the outcome says: ends one and begins the next, ends one without a successor, or notes that it was seen at work. */
export async function applyBedEffect(tx: Tx, command: Command, job: LockedJob, record: CloseOutInput, locale: string): Promise<Beds> {
  const { companyId } = command
  const { outcome, oldBed, newBed, workDay, visitId } = record
  const effect = bedEffectOf(outcome, job.kind as JobKind, oldBed?.takenOut === true, newBed !== null)
  if (effect === 'nothing-known') return NONE
  if (effect === 'seen-in-service') {
    await markBedsWorking(
      tx,
      command,
      job.bedId ? { tankId: await tankOf(tx, companyId, job) } : { softenerId: job.softenerId ?? undefined },
      workDay,
    )
    return NONE
  }
  // A softener that nobody has entered yet: what came out and went in stands in the visit's record, from which the office enters it.
  if (!job.softenerId && !job.bedId) return NONE
  const tankId = await tankOf(tx, companyId, job)
  if (outcome === 'condemned' && job.softenerId) {
    await tx.softener.update({
      where: { companyId_id: { companyId, id: job.softenerId } },
      data: { condemnedDay: dateOf(workDay), version: { increment: 1 } },
    })
    await command.audit('condemned', 'softener', job.softenerId, { day: workDay })
  }
  return endAndBeginBed(tx, command, {
    tankId,
    endedEarliest: workDay,
    endedLatest: workDay,
    cause: oldBed?.endCause ?? 'unknown',
    visitId,
    oldTubeIn: effect === 'ends-without-successor' ? oldTubeIn(record, locale) : null,
    newBed: newBedOf(record),
  })
}
