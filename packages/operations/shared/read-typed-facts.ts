import { type FactSource, factSourceNotes, sourceOn } from '@almanac/records/fact-source'
import { AppError } from '@almanac/runtime/errors'
import { readDay } from '@almanac/service-rules/import/read-day'
import { readTank } from '@almanac/service-rules/import/read-tank'
import { formatDay } from '@almanac/units/format-day'
import type { CompanyFacts } from './company-facts.ts'

/** What stands beside a fact: "said on a call, 2026-03-04". */
export function sourceWords(source: FactSource, day: string): string {
  return sourceOn(`${factSourceNotes[source]},`, day)
}

export type Began = { earliestDay: string; latestDay: string; asWritten: string } | null

/** When a bed went in, as people say it: "2014", "before 2015"; blank is not known. Dates like 03/04/2015 are read as the company's country writes them. */
export function readBegan(text: string, company: Pick<CompanyFacts, 'today' | 'unitSystem' | 'locale'>): Began {
  if (text === '') return null
  const reading = readDay(text, {
    today: company.today,
    dayOrder: company.unitSystem === 'us' ? 'month-first' : 'day-first',
    display: company,
  })
  if (!reading.ok) throw new AppError('invalid', `When the bed went in: ${reading.reason} Nothing was saved.`, { field: 'began' })
  return { earliestDay: reading.value.earliestDay, latestDay: reading.value.latestDay, asWritten: text }
}

/** A month or a season without its year, as somebody says it on the telephone. */
const LATELY =
  /^(?:(?:early|mid|late)[\s-]+)?(?:spring|summer|autumn|fall|winter|jan\w*|feb\w*|mar\w*|apr\w*|may|june?|july?|aug\w*|sep\w*|oct\w*|nov\w*|dec\w*)\.?$/i

/** Since when something is so, as people say it: "spring" is the last one that has begun, "March 2025", "about 2024", a day. */
export function readSince(text: string, company: Pick<CompanyFacts, 'today' | 'unitSystem' | 'locale'>): Exclude<Began, null> {
  const said = text.replace(/^since\s+/i, '').trim()
  const year = Number(company.today.slice(0, 4))
  const options = { today: company.today, dayOrder: company.unitSystem === 'us' ? 'month-first' : 'day-first', display: company } as const
  const ways = LATELY.test(said) ? [`${said} ${year}`, `${said} ${year - 1}`] : [said]
  const readings = ways.map((way) => readDay(way, options))
  const found = readings.find((one) => one.ok)
  if (found?.ok) return { earliestDay: found.value.earliestDay, latestDay: found.value.latestDay, asWritten: text }
  const reason = readings.at(-1)
  throw new AppError('invalid', `Hard since: ${reason && !reason.ok ? reason.reason : ''} Nothing was saved.`, { field: 'hardSince' })
}

/** A tank as people write it: "10x54", "48,000 grain"; blank is not known. */
export function readTankSize(text: string) {
  if (text === '') return null
  const reading = readTank(text)
  if (!reading.ok) throw new AppError('invalid', `Tank size: ${reading.reason} Nothing was saved.`, { field: 'tankSize' })
  return reading.value
}

/** Refuses days that contradict each other: seen before it went in, or in the future. All 'YYYY-MM-DD'. */
export function checkBedDays(days: {
  beganEarliest: string | null
  lastSeenDay: string | null
  endedLatest: string | null
  company: Pick<CompanyFacts, 'today' | 'locale'>
}): void {
  const { beganEarliest, lastSeenDay, endedLatest, company } = days
  const write = (day: string) => formatDay(day, company)
  const wrong =
    lastSeenDay !== null && lastSeenDay > company.today
      ? 'The last-seen date is in the future.'
      : beganEarliest !== null && lastSeenDay !== null && lastSeenDay < beganEarliest
        ? `The bed can’t have been seen on ${write(lastSeenDay)}, because it was installed on ${write(beganEarliest)} at the earliest.`
        : beganEarliest !== null && endedLatest !== null && endedLatest < beganEarliest
          ? `The bed ended on ${write(endedLatest)}, so it can’t have been installed after that.`
          : endedLatest !== null && lastSeenDay !== null && lastSeenDay > endedLatest
            ? `The bed ended on ${write(endedLatest)}, so it can’t have been seen working after that.`
            : null
  if (wrong) throw new AppError('invalid', `${wrong} Nothing was saved; check the days.`, { field: 'lastSeenDay' })
}
