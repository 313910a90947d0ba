import type { CrewPerson, CrewVehicle } from '@almanac/contract/crews'
import type { Tx } from '@almanac/database/client'
import { crewsIn } from '@almanac/database/read/crews'
import { settingsIn } from '@almanac/database/read/firm-settings'
import { holidaysKept } from './public-holidays.ts'

/** People and vehicles by id, the minutes at a day's end that the firm keeps in hand, and the public holidays it keeps, by day. */
export type CrewBook = {
  people: ReadonlyMap<string, CrewPerson>
  vehicles: ReadonlyMap<string, CrewVehicle>
  inHandMinutes: number
  holidays: ReadonlyMap<string, string>
}

/**
 * Everyone and everything with their days away from a day on. What the firm keeps holds for everybody: its public holidays are days off, and its lunch is the
 * break of whoever has none of their own. Sheets, plans, places and fits all read it here.
 */
export async function readCrewBook(tx: Tx, companyId: string, fromDay: string): Promise<CrewBook> {
  const { people, vehicles } = await crewsIn(tx, companyId, fromDay)
  const settings = await settingsIn(tx, companyId)
  const kept = holidaysKept(settings, fromDay)
  const off = kept.map(({ day, name }) => ({ id: day, version: 0, fromDay: day, untilDay: day, word: name }))
  const { lunchMinutes: minutes, lunchFrom: from, lunchUntil: until, inHandMinutes } = settings
  const lunch = minutes > 0 ? [{ from, until, minutes }] : []
  const withFirm = (one: CrewPerson): CrewPerson => ({
    ...one,
    absences: [...one.absences, ...off],
    breaks: one.breaks.length > 0 ? one.breaks : lunch,
  })
  return {
    people: new Map(people.map((one) => [one.id, withFirm(one)])),
    vehicles: new Map(vehicles.map((one) => [one.id, one])),
    inHandMinutes,
    holidays: new Map(kept.map(({ day, name }) => [day, name])),
  }
}
