import type { Absence, CrewPerson } from '@almanac/contract/crews'
import { LIFTING, PLUMBING_LICENCE } from '@almanac/service-rules/crews/crew-skills'
import { formatClockTime, formatClockTimes, formatDuration } from '@almanac/units/format-clock'
import { type DayDisplay, formatDay, formatDays, formatWeekday } from '@almanac/units/format-day'
import type { Words } from '@almanac/words/words'

/** From 1, Monday, to 7. */
export const WEEKDAYS = [1, 2, 3, 4, 5, 6, 7] as const

/** How it is said. */
export type CrewSpeaking = { display: DayDisplay; words: Words<'crewWork'> }

/** "Mon–Fri, 8:00 AM – 4:30 PM; Sat, 9:00 AM – 12:00 PM". */
export function shiftWords(shifts: CrewPerson['shifts'], { display, words }: CrewSpeaking): string {
  const short = (weekday: number) => formatWeekday(weekday, display, true)
  if (shifts.length === 0) return words('companyHours')
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
export const breakWords = (breaks: CrewPerson['breaks'], { display, words }: CrewSpeaking) =>
  breaks.length === 0
    ? words('noBreaks')
    : breaks
        .map(({ minutes, from, until }) =>
          words('break', {
            ...{ length: formatDuration(minutes, display), from: formatClockTime(from, display) },
            until: formatClockTime(until, display),
          }),
        )
        .join('; ')

/** What a person may do; a valve by its card's label. */
export function skillList(
  { doesAll, skills }: Pick<CrewPerson, 'doesAll' | 'skills'>,
  valves: readonly { id: string; label: string }[],
  { words }: Pick<CrewSpeaking, 'words'>,
): string {
  if (doesAll) return words('allWork')
  const valveName = (id: string) => valves.find((one) => one.id === id)?.label ?? words('goneValve')
  const able = skills.map((skill) =>
    skill === LIFTING ? words('lifting') : skill === PLUMBING_LICENCE ? words('license') : valveName(skill.slice('valve:'.length)),
  )
  return able.length === 0 ? words('lightWork') : able.join(', ')
}

/** "holiday, Dec 20, 2026 – Jan 2, 2027". */
export function absenceWords({ fromDay, untilDay, word }: Absence, { display, words }: CrewSpeaking): string {
  const days = untilDay === null ? words('openEnd', { day: formatDay(fromDay, display) }) : formatDays(fromDay, untilDay, display)
  return word ? `${word}, ${days}` : days
}
