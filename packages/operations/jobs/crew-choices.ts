import { inCompany, type Scope } from '@almanac/database/in-company'
import { awayOn, awayWords, offWords } from '@almanac/service-rules/crews/working-day'
import { companyFacts } from '../shared/company-facts.ts'
import { readCrewBook } from '../shared/crew-book.ts'

/** People and vehicles that can stand on a sheet, each with why not on that day. */
export async function crewChoices(scope: Pick<Scope, 'companyId'>, day: string) {
  const { people, vehicles, display } = await inCompany(scope, async (tx) => ({
    ...(await readCrewBook(tx, scope.companyId, day)),
    display: await companyFacts(tx, scope.companyId),
  }))
  return {
    colleagues: [...people.values()]
      .filter((one) => !one.left)
      .map(({ id, name, shifts, absences }) => ({ id, name, away: offWords({ name, shifts, away: absences }, day, display) })),
    vehicles: [...vehicles.values()]
      .filter((one) => !one.left)
      .map(({ id, name, volumeFt3, weightLb, absences }) => {
        const away = awayOn(absences, day)
        return { id, name, volumeFt3, weightLb, away: away && `is out of service: ${awayWords(away, display)}` }
      }),
  }
}
