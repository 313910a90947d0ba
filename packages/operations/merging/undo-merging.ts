import type { UndoMerging } from '@almanac/contract/merging'
import { expectChanged } from '@almanac/database/changed-row'
import type { Tx } from '@almanac/database/client'
import type { Scope } from '@almanac/database/in-company'
import { type Command, runCommand } from '@almanac/database/run-command'
import { lockRows } from '@almanac/database/sql/lock-rows'
import { type MovedFrom, moveRecords } from '@almanac/database/sql/move-records'
import { oneOf } from '@almanac/records/choices'
import { mergeables } from '@almanac/records/merging'
import { AppError, notFound } from '@almanac/runtime/errors'
import { refreshSiteForecasts } from '../shared/refresh-site-forecasts.ts'
import { rewriteSiteTokens } from '../shared/site-tokens.ts'
import { forecastSupply, markSitesChanged } from './merge-supplies.ts'
import { ENTITY } from './note-merging.ts'
import { whyNotUndone } from './why-not-undone.ts'

async function partCustomers(tx: Tx, command: Command, keptId: string, goneId: string, moved: MovedFrom[]): Promise<number> {
  const { companyId } = command
  const back = await moveRecords(tx, companyId, 'customer', { from: keptId, to: goneId }, moved)
  await tx.customer.update({ where: { companyId_id: { companyId, id: goneId } }, data: { archivedAt: null, version: { increment: 1 } } })
  const held = await tx.tenure.findMany({ where: { companyId, customerId: { in: [keptId, goneId] } }, select: { siteId: true } })
  await rewriteSiteTokens(
    tx,
    companyId,
    held.map((one) => one.siteId),
  )
  await command.enqueue('raise-reminders', {}, companyId)
  return count(back)
}

async function partSites(tx: Tx, command: Command, keptId: string, goneId: string, moved: MovedFrom[]): Promise<number> {
  const { companyId } = command
  const back = await moveRecords(tx, companyId, 'site', { from: keptId, to: goneId }, moved)
  await tx.site.update({ where: { companyId_id: { companyId, id: goneId } }, data: { archivedAt: null, version: { increment: 1 } } })
  await rewriteSiteTokens(tx, companyId, [keptId, goneId])
  for (const siteId of [keptId, goneId]) await refreshSiteForecasts(tx, command, { siteId })
  return count(back)
}

async function partSupplies(tx: Tx, command: Command, keptId: string, goneId: string, moved: MovedFrom[]): Promise<number> {
  const { companyId } = command
  await lockRows(tx, companyId, 'water_supply', [keptId, goneId])
  const sites = await moveRecords(tx, companyId, 'supply', { from: keptId, to: goneId }, moved)
  const history = await moveRecords(tx, companyId, 'supplyHistory', { from: keptId, to: goneId }, moved)
  await markSitesChanged(tx, companyId, sites)
  await tx.waterSupply.update({ where: { companyId_id: { companyId, id: goneId } }, data: { archivedAt: null, version: { increment: 1 } } })
  for (const id of [keptId, goneId]) await forecastSupply(command, id)
  return count([...sites, ...history])
}

async function partTowns(tx: Tx, command: Command, town: string, moved: MovedFrom[]): Promise<number> {
  const { companyId } = command
  let back = 0
  for (const { from, ids } of moved) {
    const sites = await tx.site.findMany({ where: { companyId, id: { in: ids }, town }, select: { id: true } })
    const still = sites.map((one) => one.id)
    await tx.site.updateMany({ where: { companyId, id: { in: still } }, data: { town: from, version: { increment: 1 } } })
    await rewriteSiteTokens(tx, companyId, still)
    back += still.length
  }
  await command.enqueue('forecast-months', {}, companyId)
  return back
}

const PART = { customer: partCustomers, site: partSites, supply: partSupplies }

const count = (moved: readonly MovedFrom[]) => moved.reduce((sum, one) => sum + one.ids.length, 0)

/** Makes two again of what was merged: each row that moved and still hangs on the kept one goes back. What came since stays where it is. */
export async function undoMerging(scope: Scope & { personId: string }, input: UndoMerging): Promise<{ mergingId: string; back: number }> {
  const { mergingId: id, version } = input
  return runCommand(scope, 'merging.undo', input, async (tx, command) => {
    const { companyId } = scope
    const merging = await tx.merging.findFirst({ where: { companyId, id } })
    if (!merging) throw notFound('merging')
    const why = await whyNotUndone(tx, merging)
    if (why) throw new AppError('conflict', `${why} Nothing was undone.`)
    const { count: changed } = await tx.merging.updateMany({
      where: { companyId, id, version },
      data: { undoneAt: command.at, version: { increment: 1 } },
    })
    await expectChanged(changed, 'merging', version, {}, async () => ({ version: merging.version }))
    const { kind, keptId, goneId, town } = merging
    const moved = merging.moved as MovedFrom[]
    const back =
      town !== null
        ? await partTowns(tx, command, town, moved)
        : await PART[kind === 'customer' || kind === 'supply' ? kind : 'site'](tx, command, keptId ?? '', goneId ?? '', moved)
    const entity = ENTITY[oneOf(mergeables, kind) ?? 'site']
    await command.audit('merging undone', entity, keptId ?? id, { gone: goneId, back })
    for (const one of [keptId ?? id, goneId]) if (one) await command.announce(entity, one)
    return { mergingId: id, back }
  })
}
