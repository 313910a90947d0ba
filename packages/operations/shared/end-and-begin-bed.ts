import type { Tx } from '@almanac/database/client'
import { dateOf, dayOf } from '@almanac/database/days'
import type { Command } from '@almanac/database/run-command'
import { lockRows } from '@almanac/database/sql/lock-rows'
import type { EndCause } from '@almanac/records/end-cause'
import { sourceOn } from '@almanac/records/fact-source'
import type { RecordedResinKind } from '@almanac/records/resin-kind'
import { AppError, notFound } from '@almanac/runtime/errors'
import { newId } from '@almanac/runtime/ids'
import { formatDay } from '@almanac/units/format-day'
import { companyFacts } from './company-facts.ts'

/** A bed going into a tank. `from` says where its facts come from, as "close-out 2026-03-04". */
export type NewBed = {
  resinKind: RecordedResinKind
  volumeFt3: number | null
  gravelLb: number | null
  tubeCutIn: number | null
  entered?: Record<string, { value: number; unit: string; why?: string }>
  from: string
}

export type EndAndBeginBed = {
  tankId: string
  /** Days between which the old bed came out; both the same where the day is known. */
  endedEarliest: string
  endedLatest: string
  cause: EndCause
  visitId: string | null
  /** Of the tube that came out with the bed: whoever returns to an empty tank cuts the new one by it. Left out where nobody measured it. */
  oldTubeIn?: number | null
  /** Null where nothing goes in: a condemned tank, or resin taken out and work not finished. */
  newBed: NewBed | null
}

/**
 * Ends the open bed of a tank, if there is one, and begins the next; nothing overwrites the old bed's facts. Both beds' forecasts are asked for anew in
 * the same transaction. Refuses an end before the bed's own beginning.
 */
export async function endAndBeginBed(
  tx: Tx,
  command: Command,
  input: EndAndBeginBed,
): Promise<{ endedBedId: string | null; newBedId: string | null }> {
  const { companyId } = command
  // Two close-outs of one tank wait for each other here, so that the second sees what the first did.
  await lockRows(tx, companyId, 'tank', [input.tankId])
  const tank = await tx.tank.findUnique({ where: { companyId_id: { companyId, id: input.tankId } }, select: { id: true } })
  if (!tank) throw notFound('tank')
  const old = await tx.bed.findFirst({ where: { companyId, tankId: input.tankId, endedLatest: null, archivedAt: null } })
  const endedBedId = old ? await endBed(tx, command, old, input) : null
  const newBedId = input.newBed ? await beginBed(tx, command, input, input.newBed) : null
  const bedIds = [endedBedId, newBedId].filter((id) => id !== null)
  if (bedIds.length > 0) await command.enqueue('forecast-beds', { bedIds, cause: 'close-out' })
  return { endedBedId, newBedId }
}

type OldBed = { id: string; version: number; beganEarliest: Date | null; lastSeenDay: Date | null; factSources: unknown }

async function endBed(tx: Tx, command: Command, old: OldBed, input: EndAndBeginBed): Promise<string> {
  const began = dayOf(old.beganEarliest)
  if (began !== null && input.endedLatest < began) {
    const company = await companyFacts(tx, command.companyId)
    const [from, until] = [formatDay(began, company), formatDay(input.endedLatest, company)]
    throw new AppError(
      'invalid',
      `The bed in this tank was installed on ${from}, so it can’t have ended on ${until}. Nothing was saved; check the day.`,
    )
  }
  await tx.bed.update({
    where: { companyId_id: { companyId: command.companyId, id: old.id } },
    data: {
      endedEarliest: dateOf(input.endedEarliest),
      endedLatest: dateOf(input.endedLatest),
      endCause: input.cause,
      endedVisitId: input.visitId,
      ...(input.oldTubeIn != null
        ? {
            tubeCutIn: input.oldTubeIn,
            factSources: { ...(old.factSources as Record<string, string>), tubeCutIn: sourceOn('close-out', input.endedLatest) },
          }
        : {}),
      version: { increment: 1 },
    },
  })
  await command.audit('bed ended', 'bed', old.id, { endedLatest: input.endedLatest, cause: input.cause, visitId: input.visitId })
  await command.announce('bed', old.id, old.version + 1)
  return old.id
}

async function beginBed(tx: Tx, command: Command, input: EndAndBeginBed, bed: NewBed): Promise<string> {
  const id = newId()
  const known = Object.entries({
    resinKind: bed.resinKind === 'unknown' ? null : bed.resinKind,
    volumeFt3: bed.volumeFt3,
    gravelLb: bed.gravelLb,
    tubeCutIn: bed.tubeCutIn,
    began: input.endedLatest,
    lastSeenDay: input.endedLatest,
  }).filter(([, value]) => value !== null)
  await tx.bed.create({
    data: {
      companyId: command.companyId,
      id,
      tankId: input.tankId,
      resinKind: bed.resinKind,
      volumeFt3: bed.volumeFt3,
      gravelLb: bed.gravelLb,
      tubeCutIn: bed.tubeCutIn,
      beganEarliest: dateOf(input.endedEarliest),
      beganLatest: dateOf(input.endedLatest),
      lastSeenDay: dateOf(input.endedLatest),
      entered: bed.entered ?? {},
      factSources: Object.fromEntries(known.map(([fact]) => [fact, bed.from])),
      beganVisitId: input.visitId,
    },
  })
  await command.audit('bed began', 'bed', id, { tankId: input.tankId, began: input.endedLatest, visitId: input.visitId })
  await command.announce('bed', id, 1)
  return id
}
