import type { Tx } from '@almanac/database/client'
import { dateOf } from '@almanac/database/days'
import type { Command } from '@almanac/database/run-command'
import { sourceOn } from '@almanac/records/fact-source'
import { sourceWords } from './read-typed-facts.ts'

/**
 * These open beds were at work on `day`, as a crew saw or the customer said on a call: the day last seen moves forward, never back, and their forecasts are
 * asked for again. Answers the ids of all open beds meant, moved or not.
 */
export async function markBedsWorking(
  tx: Tx,
  command: Command,
  of: { tankId?: string; softenerId?: string },
  day: string,
  how: 'visit' | 'call' = 'visit',
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
    const factSources = {
      ...(bed.factSources as Record<string, string>),
      lastSeenDay: how === 'call' ? sourceWords('call', day) : sourceOn('visit', day),
    }
    await tx.bed.update({
      where: { companyId_id: { companyId, id: bed.id } },
      data: { lastSeenDay: seen, factSources, version: { increment: 1 } },
    })
    await command.announce('bed', bed.id, bed.version + 1)
  }
  const ids = beds.map((bed) => bed.id)
  if (ids.length > 0) await command.enqueue('forecast-beds', { bedIds: ids, cause: how === 'call' ? 'edit' : 'close-out' })
  return ids
}
