import { dateOf, dayOf } from '../days.ts'
import { inCompany, type Scope } from '../in-company.ts'
import { sheetRows } from './day-sheet-rows.ts'
import { settingsIn } from './firm-settings.ts'
import { readShortKits } from './short-kits.ts'
import { NOBODY_TO_CALL, readWhomToCall } from './whom-to-call.ts'

/** Every crew's sheet of one day, what still needs a place, and the last day before it that has sheets. */
export async function readDaySheets(scope: Pick<Scope, 'companyId'>, day: string) {
  return inCompany(scope, async (tx) => {
    const { companyId } = scope
    const rows = await sheetRows(tx, companyId, { day: dateOf(day) })
    // Only here: a plan that is worked out keeps its sheets, and no person may stand in what is kept.
    const whom = await readWhomToCall(
      tx,
      companyId,
      rows.flatMap((sheet) => sheet.visits.map((visit) => visit.siteId)),
    )
    const sheets = rows.map((sheet) => ({
      ...sheet,
      visits: sheet.visits.map((visit) => ({ ...visit, whom: whom.get(visit.siteId) ?? NOBODY_TO_CALL })),
    }))
    const before = await tx.crewDay.findFirst({
      where: { companyId, day: { lt: dateOf(day) } },
      orderBy: { day: 'desc' },
      select: { day: true },
    })
    const needPlace = await tx.job.count({ where: { companyId, state: 'proposed' } })
    const { dayStart, dayEnd } = await settingsIn(tx, companyId)
    const usual = { from: dayStart, until: dayEnd }
    const { timeZone } = await tx.company.findUniqueOrThrow({ where: { id: companyId }, select: { timeZone: true } })
    const shorts = await readShortKits(tx, companyId, day)
    return { day, timeZone, shorts, sheets, copyFrom: dayOf(before?.day ?? null), needPlace, usual }
  })
}
