import type { Absence, CrewPerson } from '@almanac/contract/crews'
import { LIFTING, PLUMBING_LICENCE } from '@almanac/service-rules/crews/crew-skills'
import { formatClockTime, formatClockTimes, formatDuration } from '@almanac/units/format-clock'
import { type DayDisplay, formatDay, formatDays, formatWeekday } from '@almanac/units/format-day'

/** From 1, Monday, to 7. */
export const WEEKDAYS = [1, 2, 3, 4, 5, 6, 7] as const

/** "Mon–Fri, 8:00 AM – 4:30 PM; Sat, 9:00 AM – 12:00 PM". */
export function shiftWords(shifts: CrewPerson['shifts'], display: DayDisplay): string {
  const short = (weekday: number) => formatWeekday(weekday, display, true)
  if (shifts.length === 0) return 'company hours'
  const runs: { first: number; last: number; from: string; until: string }[] = []
  for (const { weekday, from, until } of shifts) {
    const run = runs.at(-1)
    if (run && run.last === weekday - 1 && run.from === from && run.until === until) run.last = weekday
    else runs.push({ first: weekday, last: weekday, from, until })
  }
  return runs
    .map(
      ({ first, last, from, until }) =>
        `${first === last ? short(first) : `${short(first)}–${short(last)}`}, ${formatClockTimes(from, until, display)}`,
    )
    .join('; ')
}

/** "30 min between 11:30 AM and 1:00 PM". */
export const breakWords = (breaks: CrewPerson['breaks'], display: DayDisplay) =>
  breaks.length === 0
    ? 'none set'
    : breaks
        .map(
          ({ minutes, from, until }) =>
            `${formatDuration(minutes, display)} between ${formatClockTime(from, display)} and ${formatClockTime(until, display)}`,
        )
        .join('; ')

/** What a person may do; a valve by its card's label. */
export function skillList(
  { doesAll, skills }: Pick<CrewPerson, 'doesAll' | 'skills'>,
  valves: readonly { id: string; label: string }[],
): string {
  if (doesAll) return 'all work'
  const valveName = (id: string) => valves.find((one) => one.id === id)?.label ?? 'a valve no longer on the list'
  const words = skills.map((skill) =>
    skill === LIFTING ? 'heavy lifting' : skill === PLUMBING_LICENCE ? 'plumbing license' : valveName(skill.slice('valve:'.length)),
  )
  return words.length === 0 ? 'light work, no valves' : words.join(', ')
}

/** "holiday, Dec 20, 2026 – Jan 2, 2027". */
export function absenceWords({ fromDay, untilDay, word }: Absence, display: DayDisplay): string {
  const days = untilDay === null ? `from ${formatDay(fromDay, display)} until further notice` : formatDays(fromDay, untilDay, display)
  return word ? `${word}, ${days}` : days
}
