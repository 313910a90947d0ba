import type { BeginGuide } from '@almanac/contract/guides'
import type { Scope } from '@almanac/database/in-company'
import { runCommand } from '@almanac/database/run-command'
import { notFound } from '@almanac/runtime/errors'
import { newId } from '@almanac/runtime/ids'

/** How long the link works: a week. */
export const LINK_DAYS_MS = 7 * 86_400_000

/** Makes a link by which the owner of a softener measures its tank. An earlier link for it ends: one telephone, one link. */
export async function beginGuide(scope: Scope & { personId: string }, input: BeginGuide): Promise<{ guideId: string; version: number }> {
  return runCommand(scope, 'guides.begin', input, async (tx, command) => {
    const { companyId, personId } = scope
    const { softenerId } = input
    const where = { companyId, id: softenerId, archivedAt: null, site: { archivedAt: null } }
    const softener = await tx.softener.findFirst({ where, select: { siteId: true } })
    if (!softener) throw notFound('softener')
    await tx.ownerGuide.updateMany({
      where: { companyId, softenerId, withdrawnAt: null, linkUntil: { gt: command.at } },
      data: { withdrawnAt: command.at, version: { increment: 1 } },
    })
    const id = newId()
    const linkUntil = new Date(command.at.getTime() + LINK_DAYS_MS)
    await tx.ownerGuide.create({ data: { companyId, id, softenerId, personId, createdAt: command.at, linkUntil } })
    await command.audit('measuring link made', 'softener', softenerId, { guideId: id })
    await command.announce('guide', id, 1)
    return { guideId: id, version: 1 }
  })
}
