import type { AddSite } from '@almanac/contract/site-commands'
import { dateOf } from '@almanac/database/days'
import type { Scope } from '@almanac/database/in-company'
import { runCommand } from '@almanac/database/run-command'
import { AppError } from '@almanac/runtime/errors'
import { newId } from '@almanac/runtime/ids'
import { companyFacts } from '../shared/company-facts.ts'
import { installSoftener } from '../shared/install-softener.ts'
import { rewriteSiteTokens } from '../shared/site-tokens.ts'
import { checkSupply } from './check-supply.ts'
import { takeHolder } from './take-holder.ts'

/** Takes a site down with who holds it and, where told, its softener, tank and bed. One form, one transaction. */
export async function addSite(scope: Scope & { personId: string }, input: AddSite): Promise<{ siteId: string }> {
  return runCommand(scope, 'customers.add-site', input, async (tx, command) => {
    const { companyId } = scope
    const company = await companyFacts(tx, companyId)
    const label = input.label || input.street || (input.holder.kind === 'new' ? input.holder.name : '')
    if (label === '')
      throw new AppError('invalid', 'The site has no name yet. Nothing was saved; type its name or street.', { field: 'label' })
    if (input.waterSupplyId) await checkSupply(tx, companyId, input.waterSupplyId)
    const siteId = newId()
    await tx.site.create({
      data: {
        companyId,
        id: siteId,
        label,
        street: input.street || null,
        town: input.town || null,
        region: input.region || null,
        postcode: input.postcode || null,
        accessNotes: input.accessNotes || null,
        waterSupplyId: input.waterSupplyId,
      },
    })
    const customerId = await takeHolder(tx, command, input.holder, company.today)
    await tx.tenure.create({ data: { companyId, id: newId(), siteId, customerId, fromDay: dateOf(null) } })
    if (input.softener) await installSoftener(tx, command, company, siteId, input.softener)
    await rewriteSiteTokens(tx, companyId, [siteId])
    await command.audit('added', 'site', siteId, { customerId, waterSupplyId: input.waterSupplyId })
    await command.announce('site', siteId, 1)
    return { siteId }
  })
}
