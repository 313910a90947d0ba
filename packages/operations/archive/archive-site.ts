import type { ArchiveSite, RestoreSite } from '@almanac/contract/archive'
import { expectChanged } from '@almanac/database/changed-row'
import type { Tx } from '@almanac/database/client'
import type { Scope } from '@almanac/database/in-company'
import { type Command, runCommand } from '@almanac/database/run-command'
import { notFound } from '@almanac/runtime/errors'
import { rewriteSiteTokens } from '../shared/site-tokens.ts'
import { archiveBeds, refuseOpenJobs, restoreBeds, setAgreementsAside } from './archive-parts.ts'

type Caller = Scope & { personId: string }
type Done = { id: string; version: number }

async function softenersOf(tx: Tx, companyId: string, siteIds: string[], archivedAt: Date | null): Promise<string[]> {
  const found = await tx.softener.findMany({ where: { companyId, siteId: { in: siteIds }, archivedAt }, select: { id: true } })
  return found.map((one) => one.id)
}

/** Everything that stands at sites goes with them, at the command's instant. */
export async function archiveStanding(tx: Tx, command: Command, siteIds: string[]): Promise<void> {
  const { companyId } = command
  await archiveBeds(tx, command, await softenersOf(tx, companyId, siteIds, null), true)
  await setAgreementsAside(tx, command, { siteId: { in: siteIds } }, null, command.at)
  await rewriteSiteTokens(tx, companyId, siteIds)
  for (const id of siteIds) await command.announce('site', id)
}

/** What went with sites at `since` comes back. */
export async function restoreStanding(tx: Tx, command: Command, siteIds: string[], since: Date): Promise<void> {
  const { companyId } = command
  await restoreBeds(tx, command, await softenersOf(tx, companyId, siteIds, since), since)
  await setAgreementsAside(tx, command, { siteId: { in: siteIds } }, since, null)
  await rewriteSiteTokens(tx, companyId, siteIds)
  for (const id of siteIds) await command.announce('site', id)
}

/** Archives a site with what stands there. Who holds it and all that happened stays on record. */
export async function archiveSite(scope: Caller, input: ArchiveSite): Promise<Done> {
  const { siteId: id, version, reason } = input
  return runCommand(scope, 'archive.site', input, async (tx, command) => {
    const { companyId } = scope
    const site = await tx.site.findFirst({ where: { companyId, id, archivedAt: null } })
    if (!site) throw notFound('site')
    await refuseOpenJobs(tx, companyId, { siteIds: [id] })
    const { count } = await tx.site.updateMany({
      where: { companyId, id, version },
      data: { archivedAt: command.at, archiveReason: reason, version: { increment: 1 } },
    })
    await expectChanged(count, 'site', version, { reason }, async () => ({ version: site.version }))
    await archiveStanding(tx, command, [id])
    await command.audit('archived', 'site', id, { reason })
    return { id, version: version + 1 }
  })
}

/** Brings an archived site back with what was archived with it. */
export async function restoreSite(scope: Caller, input: RestoreSite): Promise<Done> {
  const { siteId: id, version } = input
  return runCommand(scope, 'archive.restore-site', input, async (tx, command) => {
    const { companyId } = scope
    const site = await tx.site.findFirst({ where: { companyId, id, archivedAt: { not: null }, archiveReason: { not: null } } })
    if (!site?.archivedAt) throw notFound('site')
    const { count } = await tx.site.updateMany({
      where: { companyId, id, version },
      data: { archivedAt: null, archiveReason: null, version: { increment: 1 } },
    })
    await expectChanged(count, 'site', version, {}, async () => ({ version: site.version }))
    await restoreStanding(tx, command, [id], site.archivedAt)
    await command.audit('brought back', 'site', id)
    return { id, version: version + 1 }
  })
}
