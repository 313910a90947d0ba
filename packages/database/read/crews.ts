import type { CrewPerson, CrewVehicle } from '@almanac/contract/crews'
import type { Tx } from '../client.ts'
import { dateOf, dayOf } from '../days.ts'
import type { Prisma } from '../generated/client.ts'
import { inCompany, type Scope } from '../in-company.ts'

/** Days away that are not over on a day. */
const absencesFrom = (day: string) =>
  ({
    where: { archivedAt: null, OR: [{ untilDay: null }, { untilDay: { gte: dateOf(day) } }] },
    orderBy: [{ fromDay: 'asc' }, { id: 'asc' }],
  }) satisfies Prisma.Colleague$absencesArgs

type AbsenceRow = { id: string; version: number; fromDay: Date; untilDay: Date | null; word: string | null }
const absence = ({ id, version, fromDay, untilDay, word }: AbsenceRow) => ({
  ...{ id, version, word },
  fromDay: dayOf(fromDay),
  untilDay: dayOf(untilDay),
})

type ColleagueRow = Prisma.ColleagueGetPayload<{ include: { absences: true } }>

/** A person of the firm as the screens show them. */
export function crewPerson(row: ColleagueRow): CrewPerson {
  const { id, version, name, personId, doesAll, skills, startsAtHome, overtimeMinorPerHour, homeLatitude, homeLongitude } = row
  return {
    ...{ id, version, name, personId, doesAll, skills, startsAtHome, overtimeMinorPerHour },
    left: row.archivedAt !== null,
    home: homeLatitude === null || homeLongitude === null ? null : { latitude: homeLatitude, longitude: homeLongitude },
    shifts: row.shifts as CrewPerson['shifts'],
    breaks: row.breaks as CrewPerson['breaks'],
    absences: row.absences.map(absence),
  }
}

/** A vehicle as the screens show it. */
export function crewVehicle(row: Prisma.VehicleGetPayload<{ include: { absences: true } }>): CrewVehicle {
  const { id, version, name, volumeFt3, weightLb } = row
  return { id, version, name, volumeFt3, weightLb, left: row.archivedAt !== null, absences: row.absences.map(absence) }
}

/** People and vehicles with their days away from a day on; by id, for whoever plans with them. */
export async function crewsIn(tx: Tx, companyId: string, day: string) {
  const order = [{ name: 'asc' }, { id: 'asc' }] satisfies Prisma.ColleagueOrderByWithRelationInput[]
  const people = await tx.colleague.findMany({ where: { companyId }, include: { absences: absencesFrom(day) }, orderBy: order })
  const vehicles = await tx.vehicle.findMany({ where: { companyId }, include: { absences: absencesFrom(day) }, orderBy: order })
  return { people: people.map(crewPerson), vehicles: vehicles.map(crewVehicle) }
}

/** Everyone and everything that goes out, those who left last. */
export async function readCrews(scope: Pick<Scope, 'companyId'>, today: string) {
  const { people, vehicles } = await inCompany(scope, (tx) => crewsIn(tx, scope.companyId, today))
  const leftLast = (a: { left: boolean }, b: { left: boolean }) => Number(a.left) - Number(b.left)
  return { people: people.sort(leftLast), vehicles: vehicles.sort(leftLast) }
}

/** What stands of one person who signs in; null for someone who is on no sheets. */
export async function readOwnCrewPerson(scope: Pick<Scope, 'companyId'> & { personId: string }, today: string): Promise<CrewPerson | null> {
  const { companyId, personId } = scope
  return inCompany(scope, async (tx) => {
    const row = await tx.colleague.findFirst({
      where: { companyId, personId, archivedAt: null },
      include: { absences: absencesFrom(today) },
    })
    return row && crewPerson(row)
  })
}
