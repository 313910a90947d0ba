import type { CloseCompany, CompanyClosing, KeepCompany } from '@almanac/contract/closing'
import type { Scope } from '@almanac/database/in-company'
import { runCommand } from '@almanac/database/run-command'
import { AppError, notFound } from '@almanac/runtime/errors'
import { startExportIn } from './start-export.ts'

/** Days in which an owner may take the closing back. */
const GRACE_DAYS = 30

/**
 * Closes a company: everything is exported, nobody but its owners comes in any more, and after a month the nightly task erases all of it. `companyId` is the one that the page
 * showed, so that nobody closes another they have changed to meanwhile.
 */
export async function closeCompany(scope: Scope & { personId: string }, input: CloseCompany): Promise<CompanyClosing> {
  return runCommand(scope, 'keeping.close-company', input, async (tx, command) => {
    const { companyId } = scope
    if (input.companyId !== companyId) throw notFound('company')
    const closesAt = new Date(command.at.getTime() + GRACE_DAYS * 86_400_000)
    const { count } = await tx.company.updateMany({
      where: { id: companyId, closesAt: null },
      data: { closingSince: command.at, closesAt },
    })
    if (count === 0) throw new AppError('conflict', 'Your company is being closed already. Nothing was changed; load this page again.')
    await startExportIn(tx, command)
    await command.audit('closing began', 'company', companyId, { closesAt: closesAt.toISOString() })
    await command.announce('company-settings', companyId)
    return { closesAt: closesAt.toISOString() }
  })
}

/** Takes the closing back: everybody comes in again. */
export async function keepCompany(scope: Scope & { personId: string }, input: KeepCompany): Promise<CompanyClosing> {
  return runCommand(scope, 'keeping.keep-company', input, async (tx, command) => {
    const { companyId } = scope
    if (input.companyId !== companyId) throw notFound('company')
    const kept = { closingSince: null, closesAt: null }
    const { count } = await tx.company.updateMany({ where: { id: companyId, closesAt: { not: null } }, data: kept })
    if (count > 0) await command.audit('closing taken back', 'company', companyId)
    await command.announce('company-settings', companyId)
    return { closesAt: null }
  })
}
