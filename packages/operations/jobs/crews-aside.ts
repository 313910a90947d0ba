import { type CrewDayToForm, type Formed, formCrews } from '@almanac/dispatch/propose/form-crews'
import { answerAside } from '@almanac/runtime/answer-aside'

export type CrewsInput = { day: CrewDayToForm; seed: number; seconds: number }
export type CrewsAnswer = Formed | { faults: string[] }

/** Enough for a firm of eight; the clock usually ends the search before. */
const MOST_WAYS = 2_000

/** Forms a day's crews in a process of its own: the search is told when its time is up. */
function crewsAside({ day, seed, seconds }: CrewsInput): CrewsAnswer {
  const until = Date.now() + seconds * 1000
  return formCrews(day, { seed, most: MOST_WAYS, shouldStop: () => Date.now() >= until })
}

answerAside(crewsAside)
