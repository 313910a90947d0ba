import type { AddPerson } from '@almanac/contract/crews'
import { AppError } from '@almanac/runtime/errors'

export type PersonValues = Omit<AddPerson, 'commandId'>

/** What of a person goes into which column. Refuses what contradicts itself. */
export function personColumns({ home, skills, shifts, breaks, ...plain }: PersonValues) {
  if (plain.startsAtHome && !home)
    throw new AppError(
      'invalid',
      'Starting at home needs a home address on the map. Nothing was saved; type its coordinates, or let them start at the yard.',
    )
  const weekdays = new Set(shifts.map((shift) => shift.weekday))
  if (weekdays.size < shifts.length) throw new AppError('invalid', 'A weekday is listed twice. Nothing was saved; give each day one shift.')
  return {
    ...plain,
    skills: [...new Set(skills)].sort(),
    homeLatitude: home?.latitude ?? null,
    homeLongitude: home?.longitude ?? null,
    shifts: [...shifts].sort((a, b) => a.weekday - b.weekday),
    breaks: [...breaks].sort((a, b) => (a.from < b.from ? -1 : 1)),
  }
}

/** For the audit trail: what a person may do and when they work, without anything that says who they are or where they live. */
export const personAudit = ({ doesAll, skills, startsAtHome, shifts, breaks }: PersonValues) => ({
  doesAll,
  skills,
  startsAtHome,
  shifts,
  breaks,
})
