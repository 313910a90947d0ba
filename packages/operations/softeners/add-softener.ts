import type { AddSoftener } from '@almanac/contract/site-commands'
import type { Scope } from '@almanac/database/in-company'
import { runCommand } from '@almanac/database/run-command'
import { notFound } from '@almanac/runtime/errors'
import { companyFacts } from '../shared/company-facts.ts'
import { installSoftener } from '../shared/install-softener.ts'
import { rewriteSiteTokens } from '../shared/site-tokens.ts'

/** Takes down a further softener at a site. */
export async function addSoftener(
  scope: Scope & { personId: string },
  input: AddSoftener,
): Promise<{ softenerId: string; bedIds: string[] }> {
  return runCommand(scope, 'softeners.add-softener', input, async (tx, command) => {
    const { companyId } = scope
    const site = await tx.site.findFirst({ where: { companyId, id: input.siteId, archivedAt: null }, select: { id: true } })
    if (!site) throw notFound('site')
    const installed = await installSoftener(tx, command, await companyFacts(tx, companyId), site.id, input.softener)
    await rewriteSiteTokens(tx, companyId, [site.id])
    return installed
  })
}
