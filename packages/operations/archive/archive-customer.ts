import type { ArchiveCustomer, RestoreCustomer } from '@almanac/contract/archive'
import { expectChanged } from '@almanac/database/changed-row'
import type { Scope } from '@almanac/database/in-company'
import { runCommand } from '@almanac/database/run-command'
import { notFound } from '@almanac/runtime/errors'
import { refuseOpenJobs } from './archive-parts.ts'
import { archiveStanding, restoreStanding } from './archive-site.ts'

type Caller = Scope & { personId: string }
type Done = { id: string; version: number }

/** Archives a customer with their contacts, the sites they hold and what stands there. */
export async function archiveCustomer(scope: Caller, input: ArchiveCustomer): Promise<Done> {
  const { customerId: id, version, reason } = input
  return runCommand(scope, 'archive.customer', input, async (tx, command) => {
    const { companyId } = scope
    const held = { where: { toDay: null, site: { archivedAt: null } }, select: { siteId: true } }
    const customer = await tx.customer.findFirst({ where: { companyId, id, archivedAt: null }, include: { tenures: held } })
    if (!customer) throw notFound('customer')
    const siteIds = customer.tenures.map((one) => one.siteId)
    await refuseOpenJobs(tx, companyId, { siteIds })
    const { count } = await tx.customer.updateMany({
      where: { companyId, id, version },
      data: { archivedAt: command.at, archiveReason: reason, version: { increment: 1 } },
    })
    await expectChanged(count, 'customer', version, { reason }, async () => ({ version: customer.version }))
    const gone = { archivedAt: command.at, version: { increment: 1 } }
    await tx.contact.updateMany({ where: { companyId, customerId: id, archivedAt: null }, data: gone })
    await tx.site.updateMany({ where: { companyId, id: { in: siteIds } }, data: gone })
    await archiveStanding(tx, command, siteIds)
    await command.audit('archived', 'customer', id, { reason, sites: siteIds.length })
    await command.announce('customer', id, version + 1)
    return { id, version: version + 1 }
  })
}

/** Brings an archived customer back with what was archived with them. */
export async function restoreCustomer(scope: Caller, input: RestoreCustomer): Promise<Done> {
  const { customerId: id, version } = input
  return runCommand(scope, 'archive.restore-customer', input, async (tx, command) => {
    const { companyId } = scope
    const customer = await tx.customer.findFirst({
      where: { companyId, id, archivedAt: { not: null }, archiveReason: { not: null }, erasedAt: null },
    })
    if (!customer?.archivedAt) throw notFound('customer')
    const { archivedAt } = customer
    const { count } = await tx.customer.updateMany({
      where: { companyId, id, version },
      data: { archivedAt: null, archiveReason: null, version: { increment: 1 } },
    })
    await expectChanged(count, 'customer', version, {}, async () => ({ version: customer.version }))
    const back = { archivedAt: null, version: { increment: 1 } }
    await tx.contact.updateMany({ where: { companyId, customerId: id, archivedAt, erasedAt: null }, data: back })
    const sites = await tx.site.findMany({
      where: { companyId, archivedAt, tenures: { some: { customerId: id, toDay: null } } },
      select: { id: true },
    })
    const siteIds = sites.map((one) => one.id)
    await tx.site.updateMany({ where: { companyId, id: { in: siteIds } }, data: back })
    await restoreStanding(tx, command, siteIds, archivedAt)
    await command.audit('brought back', 'customer', id, { sites: siteIds.length })
    await command.announce('customer', id, version + 1)
    return { id, version: version + 1 }
  })
}
