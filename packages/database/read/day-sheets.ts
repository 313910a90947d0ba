import { dateOf, dayOf } from '../days.ts'
import { inCompany, type Scope } from '../in-company.ts'
import { sheetRows } from './day-sheet-rows.ts'

const clockTime = (minute: number) => `${String(Math.floor(minute / 60)).padStart(2, '0')}:${String(minute % 60).padStart(2, '0')}`

/** Every crew's sheet of one day, what still needs a place, and the last day before it that has sheets. */
export async function readDaySheets(scope: Pick<Scope, 'companyId'>, day: string) {
  return inCompany(scope, async (tx) => {
    const { companyId } = scope
    const sheets = await sheetRows(tx, companyId, { day: dateOf(day) })
    const before = await tx.crewDay.findFirst({
      where: { companyId, day: { lt: dateOf(day) } },
      orderBy: { day: 'desc' },
      select: { day: true },
    })
    const needPlace = await tx.job.count({ where: { companyId, state: 'proposed' } })
    const settings = await tx.companySettings.findUnique({ where: { companyId } })
    const usual = { from: clockTime(settings?.dayStartMinute ?? 480), until: clockTime(settings?.dayEndMinute ?? 1020) }
    return { day, sheets, copyFrom: dayOf(before?.day ?? null), needPlace, usual }
  })
}

/** People and vehicles that can stand on a sheet. */
export async function readCrewChoices(scope: Pick<Scope, 'companyId'>) {
  return inCompany(scope, async (tx) => {
    const where = { companyId: scope.companyId, archivedAt: null }
    const colleagues = await tx.colleague.findMany({ where, select: { id: true, name: true }, orderBy: [{ name: 'asc' }, { id: 'asc' }] })
    const vehicles = await tx.vehicle.findMany({
      where,
      select: { id: true, name: true, volumeFt3: true, weightLb: true },
      orderBy: [{ name: 'asc' }, { id: 'asc' }],
    })
    return { colleagues, vehicles }
  })
}
