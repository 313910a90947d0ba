import type { Tx } from '@almanac/database/client'
import { dateOf } from '@almanac/database/days'
import { AppError } from '@almanac/runtime/errors'
import { dayIn } from '@almanac/units/calendar/zone-clock'
import { companyFacts } from '../shared/company-facts.ts'

type WhichSheets = NonNullable<NonNullable<Parameters<Tx['crewDay']['count']>[0]>['where']>

/** Whoever stands on sheets from today on cannot leave the firm unseen: their visits would have nobody. */
export async function refuseInUse(tx: Tx, companyId: string, at: Date, what: string, where: WhichSheets): Promise<void> {
  const { timeZone } = await companyFacts(tx, companyId)
  const sheets = await tx.crewDay.count({ where: { companyId, day: { gte: dateOf(dayIn(timeZone, at)) }, ...where } })
  if (sheets > 0)
    throw new AppError(
      'conflict',
      `${what} is still on ${sheets === 1 ? 'a day sheet' : `${sheets} day sheets`} from today on. Nothing was saved; change the sheets first.`,
    )
}
