import type { ArchiveSoftener, RestoreSoftener } from '@almanac/contract/archive'
import { expectChanged } from '@almanac/database/changed-row'
import type { Scope } from '@almanac/database/in-company'
import { runCommand } from '@almanac/database/run-command'
import { AppError, notFound } from '@almanac/runtime/errors'
import { rewriteSiteTokens } from '../shared/site-tokens.ts'
import { archiveBeds, refuseOpenJobs, restoreBeds } from './archive-parts.ts'

type Caller = Scope & { personId: string }
type Done = { id: string; version: number }

/** Archives a softener ("unit removed"): it leaves its site's page, every list and every forecast. Its history stays, and it can come back. */
export async function archiveSoftener(scope: Caller, input: ArchiveSoftener): Promise<Done> {
  const { softenerId: id, version, reason } = input
  return runCommand(scope, 'archive.softener', input, async (tx, command) => {
    const { companyId } = scope
    const softener = await tx.softener.findFirst({ where: { companyId, id, archivedAt: null } })
    if (!softener) throw notFound('softener')
    await refuseOpenJobs(tx, companyId, { softenerId: id })
    const { count } = await tx.softener.updateMany({
      where: { companyId, id, version },
      data: { archivedAt: command.at, archiveReason: reason, version: { increment: 1 } },
    })
    await expectChanged(count, 'softener', version, { reason }, async () => ({ version: softener.version }))
    await archiveBeds(tx, command, [id], false)
    await rewriteSiteTokens(tx, companyId, [softener.siteId])
    await command.audit('archived', 'softener', id, { reason })
    await command.announce('site', softener.siteId)
    return { id, version: version + 1 }
  })
}

/** Brings an archived softener back with the bed that was in service. */
export async function restoreSoftener(scope: Caller, input: RestoreSoftener): Promise<Done> {
  const { softenerId: id, version } = input
  return runCommand(scope, 'archive.restore-softener', input, async (tx, command) => {
    const { companyId } = scope
    const softener = await tx.softener.findFirst({
      where: { companyId, id, archivedAt: { not: null }, archiveReason: { not: null } },
      include: { site: { select: { archivedAt: true } } },
    })
    if (!softener?.archivedAt) throw notFound('softener')
    if (softener.site.archivedAt)
      throw new AppError('conflict', 'Its site is archived too. Nothing was brought back; bring back the site first.')
    if (softener.version !== version) await expectChanged(0, 'softener', version, {}, async () => ({ version: softener.version }))
    await restoreBeds(tx, command, [id], softener.archivedAt)
    await rewriteSiteTokens(tx, companyId, [softener.siteId])
    await command.audit('brought back', 'softener', id)
    await command.announce('site', softener.siteId)
    return { id, version: version + 1 }
  })
}
