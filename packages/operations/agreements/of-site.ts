import type { AgreementCard } from '@almanac/contract/agreements'
import { inCompany, type Scope } from '@almanac/database/in-company'
import { type Agreement, readAgreements } from '@almanac/database/read/agreements'
import { notFound } from '@almanac/runtime/errors'
import { isLate, leewayOf, standingOf, turnDays } from '@almanac/service-rules/agreements/agreement-turns'
import { everyOf } from '@almanac/service-rules/agreements/turn-rule'
import { dayNumber } from '@almanac/units/calendar/calendar-day'
import { addMonths, isoDay } from '@almanac/units/calendar/day-number'
import { companyFacts } from '../shared/company-facts.ts'

/** What is known of each agreement, and its price line that counts on a day, else the first to come. */
export function agreementLine(one: Agreement, today: string) {
  const { id, version, kind, softenerLabel, untilDay, endedDay, endWhy, terms } = one
  const price = (terms.find((term) => term.fromDay <= today) ?? terms.at(-1))?.price ?? null
  return { id, version, kind, every: everyOf(one.rule), softenerLabel, price, untilDay, endedDay, endWhy }
}

/** Months back for which a card shows turns. */
const SHOWN_MONTHS = 24

function turnLines(one: Agreement, today: string): AgreementCard['turns'] {
  const [since, ahead] = [-SHOWN_MONTHS, 120].map((months) => isoDay(addMonths(dayNumber(today), months)))
  const leeway = leewayOf(one.kind, one.rule)
  const days = turnDays(one, ahead ?? today)
  const next = days.find((day) => day > today)
  const shown = new Set([...days.filter((day) => day >= (since ?? today) && day <= today), ...(next ? [next] : []), ...one.turns.keys()])
  return [...shown]
    .filter((day) => day >= (since ?? today))
    .sort()
    .reverse()
    .map((dueDay) => {
      const kept = one.turns.get(dueDay)
      const standing = standingOf(kept)
      return {
        ...{ dueDay, version: kept?.version ?? 0, standing },
        late: (standing === 'open' || standing === 'under-way') && isLate(dueDay, leeway, today),
        ...{ job: standing === 'open' ? null : (kept?.job ?? null), doneDay: kept?.doneDay ?? null, reason: kept?.reason ?? null },
        ...{ outletHardnessGpg: kept?.outletHardnessGpg ?? null, salt: kept?.salt ?? null },
      }
    })
}

/** The agreements of a site, those that run first, each with its price lines and turns. */
export async function agreementsOfSite(scope: Pick<Scope, 'companyId'>, siteId: string): Promise<AgreementCard[]> {
  return inCompany(scope, async (tx) => {
    const { companyId } = scope
    if (!(await tx.site.count({ where: { companyId, id: siteId, archivedAt: null } }))) throw notFound('site')
    const { today } = await companyFacts(tx, companyId)
    const found = await readAgreements(tx, companyId, siteId)
    const cards = found.map((one) => ({
      ...agreementLine(one, today),
      ...{ firstDay: one.firstDay, notes: one.notes, terms: one.terms, turns: turnLines(one, today) },
    }))
    return [...cards.filter((one) => one.endedDay === null), ...cards.filter((one) => one.endedDay !== null)]
  })
}
