import type { Absence, CrewPerson } from '@almanac/contract/crews'
import { LIFTING, PLUMBING_LICENCE } from '@almanac/service-rules/crews/crew-skills'
import { dayWords } from './clock-words.ts'

export const WEEKDAYS = ['Monday', 'Tuesday', 'Wednesday', 'Thursday', 'Friday', 'Saturday', 'Sunday'] as const
const short = (weekday: number) => (WEEKDAYS[weekday - 1] ?? '').slice(0, 3)

/** "Mon–Fri 08:00–16:30; Sat 09:00–12:00". */
export function shiftWords(shifts: CrewPerson['shifts']): string {
  if (shifts.length === 0) return 'the firm’s hours'
  const runs: { first: number; last: number; from: string; until: string }[] = []
  for (const { weekday, from, until } of shifts) {
    const run = runs.at(-1)
    if (run && run.last === weekday - 1 && run.from === from && run.until === until) run.last = weekday
    else runs.push({ first: weekday, last: weekday, from, until })
  }
  return runs
    .map(({ first, last, from, until }) => `${first === last ? short(first) : `${short(first)}–${short(last)}`} ${from}–${until}`)
    .join('; ')
}

/** "30 min between 11:30 and 13:00". */
export const breakWords = (breaks: CrewPerson['breaks']) =>
  breaks.length === 0
    ? 'none written down'
    : breaks.map(({ minutes, from, until }) => `${minutes} min between ${from} and ${until}`).join('; ')

/** What a person may do; a valve by its card's label. */
export function skillList(
  { doesAll, skills }: Pick<CrewPerson, 'doesAll' | 'skills'>,
  valves: readonly { id: string; label: string }[],
): string {
  if (doesAll) return 'all the firm does'
  const valveName = (id: string) => valves.find((one) => one.id === id)?.label ?? 'a valve no longer on the cards'
  const words = skills.map((skill) =>
    skill === LIFTING ? 'heavy lifting' : skill === PLUMBING_LICENCE ? 'plumbing licence' : valveName(skill.slice('valve:'.length)),
  )
  return words.length === 0 ? 'light work, no valves' : words.join(', ')
}

/** "holiday, 20 Dec 2026 to 2 Jan 2027". */
export function absenceWords({ fromDay, untilDay, word }: Absence): string {
  const days =
    untilDay === null
      ? `from ${dayWords(fromDay)} until further notice`
      : untilDay === fromDay
        ? dayWords(fromDay)
        : `${dayWords(fromDay)} to ${dayWords(untilDay)}`
  return word ? `${word}, ${days}` : days
}
