import type { MergeCustomers, Merged, MergeSites } from '@almanac/contract/merging'
import type { Tx } from '@almanac/database/client'
import type { Scope } from '@almanac/database/in-company'
import { runCommand } from '@almanac/database/run-command'
import { moveRecords } from '@almanac/database/sql/move-records'
import { notFound } from '@almanac/runtime/errors'
import { refreshSiteForecasts } from '../shared/refresh-site-forecasts.ts'
import { rewriteSiteTokens } from '../shared/site-tokens.ts'
import { noteMerging, refuseOne } from './note-merging.ts'

type Caller = Scope & { personId: string }

/** The sites that a customer holds or held. */
const heldBy = async (tx: Tx, companyId: string, customerId: string) =>
  (await tx.tenure.findMany({ where: { companyId, customerId }, select: { siteId: true } })).map((one) => one.siteId)

/** Makes two customers one: the sites, contacts, calls and lines of lists of the one that goes are the other's. What it was called stays on record, archived. */
export async function mergeCustomers(scope: Caller, input: MergeCustomers): Promise<Merged> {
  return runCommand(scope, 'merging.customers', input, async (tx, command) => {
    refuseOne(input)
    const { companyId } = scope
    const { keptId, goneId } = input
    const live = await tx.customer.findMany({ where: { companyId, id: { in: [keptId, goneId] }, archivedAt: null, erasedAt: null } })
    if (live.length < 2) throw notFound('customer')
    const moved = await moveRecords(tx, companyId, 'customer', { from: goneId, to: keptId })
    // Without a reason it stands in no list of the archive: undoing the merging is its way back.
    await tx.customer.update({
      where: { companyId_id: { companyId, id: goneId } },
      data: { archivedAt: command.at, version: { increment: 1 } },
    })
    await rewriteSiteTokens(tx, companyId, await heldBy(tx, companyId, keptId))
    await command.enqueue('raise-reminders', {}, companyId)
    return noteMerging(tx, command, 'customer', input, moved)
  })
}

/** Makes two sites one: softeners, tests, jobs, calls and contacts of the one that goes stand at the other. Its address stays on record, archived, with who held it. */
export async function mergeSites(scope: Caller, input: MergeSites): Promise<Merged> {
  return runCommand(scope, 'merging.sites', input, async (tx, command) => {
    refuseOne(input)
    const { companyId } = scope
    const { keptId, goneId } = input
    const live = await tx.site.findMany({ where: { companyId, id: { in: [keptId, goneId] }, archivedAt: null } })
    if (live.length < 2) throw notFound('site')
    const moved = await moveRecords(tx, companyId, 'site', { from: goneId, to: keptId })
    await tx.site.update({
      where: { companyId_id: { companyId, id: goneId } },
      data: { archivedAt: command.at, version: { increment: 1 } },
    })
    await rewriteSiteTokens(tx, companyId, [keptId, goneId])
    // Their water is that of the site that is kept.
    await refreshSiteForecasts(tx, command, { siteId: keptId })
    return noteMerging(tx, command, 'site', input, moved)
  })
}
