import type { Tx } from '@almanac/database/client'
import { now } from '@almanac/runtime/clock'
import { AppError } from '@almanac/runtime/errors'
import { dayIn } from '@almanac/units/calendar/zone-clock'
import type { Display } from '@almanac/units/display'

export type CompanyFacts = Display & { today: string }

/** The company in scope: its day today, and how it reads what is shown to it. */
export async function companyFacts(tx: Tx, companyId: string): Promise<CompanyFacts> {
  const company = await tx.company.findUnique({
    where: { id: companyId },
    select: { timeZone: true, unitSystem: true, currency: true, locale: true },
  })
  if (!company) throw new AppError('unexpected', 'We couldn’t load your company. Nothing was changed; try again.')
  const { timeZone, currency, locale } = company
  return { today: dayIn(timeZone, now()), timeZone, currency, locale, unitSystem: company.unitSystem === 'metric' ? 'metric' : 'us' }
}
