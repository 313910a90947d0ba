import type { Tx } from '@almanac/database/client'
import { dateOf } from '@almanac/database/days'
import type { Command } from '@almanac/database/run-command'
import { sourceOn } from '@almanac/records/fact-source'

/**
 * A crew saw these open beds at work on `day`: the day last seen moves forward, never back, and their forecasts are asked for again. Answers
 * the ids of all open beds meant, moved or not.
 */
export async function markBedsWorking(
  tx: Tx,
  command: Command,
  of: { tankId?: string; softenerId?: string },
  day: string,
): Promise<string[]> {
  const { companyId } = command
  if (!of.tankId && !of.softenerId) return []
  const beds = await tx.bed.findMany({
    where: { companyId, endedLatest: null, archivedAt: null, tankId: of.tankId, tank: { softenerId: of.softenerId } },
    select: { id: true, lastSeenDay: true, factSources: true, version: true },
  })
  const seen = dateOf(day)
  for (const bed of beds) {
    if (bed.lastSeenDay && bed.lastSeenDay >= seen) continue
    const factSources = { ...(bed.factSources as Record<string, string>), lastSeenDay: sourceOn('visit', day) }
    await tx.bed.update({
      where: { companyId_id: { companyId, id: bed.id } },
      data: { lastSeenDay: seen, factSources, version: { increment: 1 } },
    })
    await command.announce('bed', bed.id, bed.version + 1)
  }
  const ids = beds.map((bed) => bed.id)
  if (ids.length > 0) await command.enqueue('forecast-beds', { bedIds: ids, cause: 'close-out' })
  return ids
}
