import type { DayOrder } from './import-types.ts'

export interface DayOrderFinding {
  order: DayOrder
  /** Dates that could be read either way. While there are none, an undecided order does no harm. */
  ambiguousCount: number
  reason: string
}

/** What a column's own dates prove about their order: 14/03/2015 can only put the day first, 03/14/2015 only the month. */
export function decideDayOrder(values: readonly string[]): DayOrderFinding {
  let dayFirst = ''
  let monthFirst = ''
  let ambiguousCount = 0
  for (const value of values) {
    const match = /(?<![\d/.-])(\d{1,2})[/.-](\d{1,2})[/.-](?:\d{4}|\d{2})(?![\d/.-])/.exec(value)
    if (!match) continue
    const first = Number(match[1])
    const second = Number(match[2])
    if (first > 12 && first <= 31 && second <= 12) dayFirst ||= match[0]
    else if (second > 12 && second <= 31 && first <= 12) monthFirst ||= match[0]
    else if (first !== second && first <= 12 && second <= 12) ambiguousCount++
  }
  if (dayFirst && monthFirst) {
    return { order: 'undecided', ambiguousCount, reason: `Both orders appear: ${dayFirst} puts the day first, ${monthFirst} the month.` }
  }
  if (dayFirst) return { order: 'day-first', ambiguousCount, reason: `The day comes first, as ${dayFirst} shows.` }
  if (monthFirst) return { order: 'month-first', ambiguousCount, reason: `The month comes first, as ${monthFirst} shows.` }
  return { order: 'undecided', ambiguousCount, reason: 'No date in this column shows whether the day or the month comes first.' }
}
