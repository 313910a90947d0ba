import type { Merged, MergeTowns } from '@almanac/contract/merging'
import type { Scope } from '@almanac/database/in-company'
import { runCommand } from '@almanac/database/run-command'
import { AppError } from '@almanac/runtime/errors'
import { newId } from '@almanac/runtime/ids'
import { rewriteSiteTokens } from '../shared/site-tokens.ts'

/** Says of every site in one town that it is in another, as of a town that is spelt in two ways. Archived sites go along, so that they come back right. */
export async function mergeTowns(scope: Scope & { personId: string }, input: MergeTowns): Promise<Merged> {
  return runCommand(scope, 'merging.towns', input, async (tx, command) => {
    const { companyId } = scope
    const { from, to } = input
    if (from === to) throw new AppError('conflict', 'These are spelt alike already. Nothing was merged; choose two towns.')
    const sites = await tx.site.findMany({ where: { companyId, town: from }, select: { id: true } })
    if (sites.length === 0) throw new AppError('conflict', `No site is in ${from} any more. Nothing was merged; load this page again.`)
    const ids = sites.map((one) => one.id)
    await tx.site.updateMany({ where: { companyId, id: { in: ids } }, data: { town: to, version: { increment: 1 } } })
    await rewriteSiteTokens(tx, companyId, ids)
    const mergingId = newId()
    const merging = { companyId, id: mergingId, kind: 'town', town: to, moved: [{ from, ids }], at: command.at, personId: scope.personId }
    await tx.merging.create({ data: merging })
    await command.audit('merged', 'town', mergingId, { sites: ids.length })
    await command.announce('site', mergingId)
    await command.enqueue('forecast-months', {}, companyId)
    return { mergingId, moved: ids.length }
  })
}
