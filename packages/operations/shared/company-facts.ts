import type { Tx } from '@almanac/database/client'
import { dayIn } from '@almanac/runtime/clock'
import { AppError } from '@almanac/runtime/errors'
import type { UnitSystem } from '@almanac/units/unit-system'

export type CompanyFacts = { today: string; timeZone: string; unitSystem: UnitSystem }

/** The company in scope: its day today, zone and units. */
export async function companyFacts(tx: Tx, companyId: string): Promise<CompanyFacts> {
  const company = await tx.company.findUnique({ where: { id: companyId }, select: { timeZone: true, unitSystem: true } })
  if (!company) throw new AppError('unexpected', 'The company in scope could not be read. Nothing was changed; try again.')
  return { today: dayIn(company.timeZone), timeZone: company.timeZone, unitSystem: company.unitSystem === 'metric' ? 'metric' : 'us' }
}
