import { oneOf } from '@almanac/records/choices'
import { disinfectants } from '@almanac/records/disinfectant'
import { formatInstant } from '@almanac/units/format-clock'
import { formatDay } from '@almanac/units/format-day'
import 'server-only'
import type { BedPlanFacts } from '@almanac/contract/bed-choice'
import type { WhomToCall } from '@almanac/contract/site-facts'
import type { PlannedVisit } from '@almanac/database/read/planned-visit'
import type { PlanFacts } from '@almanac/documents/rebed-plan/plan-facts'
import type { EmptiedTank } from '@almanac/records/emptied-tank'
import type { Paper } from '@almanac/records/paper'
import type { FirmFigures } from '@almanac/softener/firm/firm-figures'
import { storesForKit } from '@almanac/softener/kit/stores-for-kit'
import type { Display } from '@almanac/units/display'
import { wordsIn } from '@almanac/words/words-in'
import { bedTexts } from '@/client/bed-facts-words'

/** "Hester Vance, (555) 012-7746". */
const whomWords = ({ customerName, called }: WhomToCall) => [called?.name ?? customerName, called?.phone].filter(Boolean).join(', ') || null

type Company = Display & { name: string; paper: Paper }
type Logo = PlanFacts['logo']

/** A bed's record as the rebed plan takes it, for the visit that is booked for it. `today` is the day in the company's zone. */
export function planFacts(
  plan: BedPlanFacts,
  company: Company,
  figures: FirmFigures,
  today: string,
  { visit = null, emptied = null, logo = null }: { visit?: PlannedVisit | null; emptied?: EmptiedTank | null; logo?: Logo } = {},
): PlanFacts {
  const { shelf } = storesForKit(plan.stores)
  return {
    firmName: company.name,
    logo,
    printed: formatDay(today, company),
    display: company,
    paper: company.paper,
    figures,
    site: plan.site
      ? { ...plan.site, whom: whomWords(plan.site.whom) }
      : { label: wordsIn(company.locale, 'plan')('workshop'), street: null, town: null, accessNotes: null, whom: null },
    softenerLabel: plan.softener?.label ?? null,
    visit: visit && { when: formatInstant(visit.startsAt, company), crew: visit.people.join(', ') || visit.crewName },
    twin: plan.softener?.twin ?? null,
    bed: plan.bed,
    emptied,
    bedBegan: bedTexts(company, wordsIn(company.locale, 'bedFacts'), wordsIn(company.locale, 'resinKind')).began(plan),
    water: { ...plan.water, disinfectant: oneOf(disinfectants, plan.water.disinfectant) },
    shelf,
  }
}
