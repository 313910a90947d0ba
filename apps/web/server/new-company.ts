import 'server-only'
import type { NewCompany } from '@almanac/contract/set-up'
import { AppError } from '@almanac/runtime/errors'
import { isTimeZone, minuteOfClock } from '@almanac/units/calendar/zone-clock'
import { isLocale } from '@almanac/units/display'
import { currencyCodes } from '@almanac/units/money'

/** A company as the set-up page sends it, ready to be founded; refuses what the platform could write nothing with. */
export function checkNewCompany({ dayStart, dayEnd, ...company }: NewCompany) {
  const wrong = (what: string) => new AppError('invalid', `${what} Nothing was saved; choose another.`)
  if (!isLocale(company.locale)) throw wrong(`"${company.locale}" is no language and region that dates can be written in.`)
  if (!isTimeZone(company.timeZone)) throw wrong(`"${company.timeZone}" is no time zone.`)
  if (!currencyCodes().includes(company.currency)) throw wrong(`"${company.currency}" is no currency.`)
  if (minuteOfClock(dayEnd) <= minuteOfClock(dayStart)) throw wrong('The day ends before it begins.')
  return { ...company, dayStartMinute: minuteOfClock(dayStart), dayEndMinute: minuteOfClock(dayEnd) }
}
