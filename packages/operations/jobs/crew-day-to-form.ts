import type { Tx } from '@almanac/database/client'
import { settingsIn } from '@almanac/database/read/firm-settings'
import { type CrewDayToForm, type Hand, skillKey } from '@almanac/dispatch/propose/form-crews'
import { awayOn, hoursOn, isOff } from '@almanac/service-rules/crews/working-day'
import { minuteOfClock } from '@almanac/units/calendar/zone-clock'
import { readCrewBook } from '../shared/crew-book.ts'
import { firmFigures } from '../shared/firm-figures.ts'
import { skillsOfCrew } from './job-skills.ts'
import { type BoardDraft, homeOf, MOST_OVERTIME, readBoard, YARD } from './read-board.ts'
import { pointOf } from './travel-desk.ts'

/** More waiting jobs than a firm's crews do in a day, the most pressing first. */
const MOST_WAITING = 60

export type CrewDayDraft = { draft: BoardDraft; form: Omit<CrewDayToForm, 'board'> }

/** A day with everyone who works then and is on no sheet, and the vehicles that nobody takes: what crews are formed of. */
export async function readCrewDay(tx: Tx, companyId: string, day: string, at: Date): Promise<CrewDayDraft> {
  const { rows, ...draft } = await readBoard(tx, companyId, { fromDay: day, untilDay: day, at })
  const book = await readCrewBook(tx, companyId, day)
  const { dayStart, dayEnd } = await settingsIn(tx, companyId)
  const taken = new Set(rows.sheets.flatMap((sheet) => [...sheet.members.map((one) => one.colleagueId), sheet.vehicle?.id ?? '']))
  const atWork = [...book.people.values()].filter(
    (one) => !one.left && !taken.has(one.id) && !isOff({ shifts: one.shifts, away: one.absences }, day),
  )
  const hands = atWork.map((one): Hand => {
    const hours = hoursOn(one, day)
    const { from, until } = hours === null || hours === 'off' ? { from: dayStart, until: dayEnd } : hours
    return {
      id: one.id,
      shift: { from: minuteOfClock(from), to: minuteOfClock(until) },
      breaks: one.breaks.map((pause) => ({ from: minuteOfClock(pause.from), to: minuteOfClock(pause.until), minutes: pause.minutes })),
      home: one.startsAtHome && one.home ? homeOf(one.id) : null,
      overtimePerHour: one.overtimeMinorPerHour,
    }
  })
  const vans = [...book.vehicles.values()].filter((one) => !one.left && !taken.has(one.id) && awayOn(one.absences, day) === null)
  const figures = await firmFigures(tx, companyId)
  const asking = [...rows.sheets.flatMap((row) => row.visits), ...rows.waiting]
  const sets = atWork.flatMap((one, i) => [[one], ...atWork.slice(i + 1).map((other) => [one, other])])
  const { jobs } = draft.board
  const lessPressing = new Set(rows.waiting.slice(MOST_WAITING).map((job) => job.id))
  const homes = atWork.flatMap((one) => (one.startsAtHome && one.home ? [{ id: homeOf(one.id), at: pointOf(one.home) }] : []))
  const known = new Set(draft.places.map((place) => place.id))
  return {
    draft: {
      ...draft,
      board: { ...draft.board, jobs: jobs.filter((job) => !lessPressing.has(job.id)) },
      places: [...draft.places, ...homes.filter((home) => !known.has(home.id))],
    },
    form: {
      date: day,
      yard: YARD,
      hands,
      vans: vans.map(({ id, volumeFt3, weightLb }) => ({ id, capacity: { ft3: volumeFt3, lb: weightLb } })),
      skills: Object.fromEntries(sets.map((set) => [skillKey(set.map((one) => one.id)), skillsOfCrew(set, asking, figures)])),
      inHandMinutes: book.inHandMinutes,
      overtimeMinutes: MOST_OVERTIME,
    },
  }
}
