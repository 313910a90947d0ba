import type { Tx } from '@almanac/database/client'
import type { Command } from '@almanac/database/run-command'

type Tenure = { siteId: string; fromDay: Date | null; toDay: Date | null }

/**
 * Erases the photographs and signatures of the visits to a customer while they held a site: who signed is taken off, and a task takes the files out of the store. Those of
 * whoever held the site before or after stay.
 */
export async function erasePictures(tx: Tx, command: Command, tenures: readonly Tenure[]): Promise<number> {
  const { companyId } = command
  const held = tenures.map(({ siteId, fromDay, toDay }) => ({
    job: { siteId },
    crewDay: { day: { ...(fromDay && { gte: fromDay }), ...(toDay && { lte: toDay }) } },
  }))
  if (held.length === 0) return 0
  const visits = await tx.visit.findMany({ where: { companyId, OR: held }, select: { id: true } })
  const of = { companyId, visitId: { in: visits.map((one) => one.id) } }
  await tx.signature.updateMany({ where: of, data: { name: null, version: { increment: 1 } } })
  const { count } = await tx.picture.updateMany({
    where: { ...of, state: { in: ['coming', 'stored'] } },
    data: { state: 'erased', version: { increment: 1 } },
  })
  if (count > 0) {
    await command.announce('picture', companyId)
    await command.enqueue('remove-pictures', {}, companyId)
  }
  return count
}
