import { bedFacts } from '@almanac/database/read/bed-facts'
import type { Paper } from '@almanac/records/paper'
import { newId } from '@almanac/runtime/ids'
import type { UnitSystem } from '@almanac/units/unit-system'
import { brackwater, larkmoor } from '../../../prisma/demo/firms.ts'
import { loadFirm } from '../../../prisma/demo/load-firm.ts'
import { type PlannedFirm, planFirm } from '../../../prisma/demo/plan-firm.ts'
import { inspector } from '../two-firms.ts'

export type DemoCompany = {
  id: string
  name: string
  unitSystem: UnitSystem
  currency: string
  locale: string
  timeZone: string
  paper: Paper
}

/** A demo firm with one softener of each record: `bedIds` are those in service, `softeners` how many of the firm they stand for. */
export type DemoFirm = { company: DemoCompany; bedIds: string[]; records: number; softeners: number }

const ANCHOR = '2026-11-25'
/** As the demo is loaded. */
const SEED = 20261125

const none = <T extends object>(tables: T): T => Object.fromEntries(Object.keys(tables).map((table) => [table, []])) as unknown as T

/** What goes into a kit, a drawing, steps and a load, of every bed in service of a planned firm, as the database's own reader puts it. */
function recordsOf({ rows }: PlannedFirm): Map<string, string[]> {
  const tanks = new Map(rows.tank.map((tank) => [tank.id, tank]))
  const valves = new Map(rows.valve.map((valve) => [valve.softenerId, valve]))
  const found = new Map<string, string[]>()
  for (const bed of rows.bed) {
    const tank = tanks.get(bed.tankId)
    if (bed.endedLatest || !tank) continue
    const valve = valves.get(tank.softenerId ?? '')
    const softener = {
      valves: valve ? [{ cardId: valve.cardId ?? null, tubeOdIn: valve.tubeOdIn ?? null, backwashGpm: valve.backwashGpm ?? null }] : [],
    }
    const recorded = { ...bed, ...{ volumeFt3: bed.volumeFt3 ?? null, gravelLb: bed.gravelLb ?? null, tubeCutIn: bed.tubeCutIn ?? null } }
    const size = { diameterIn: tank.diameterIn ?? null, heightIn: tank.heightIn ?? null, nominalGrains: tank.nominalGrains ?? null }
    const written = { ...tank, ...size, sizeAsWritten: tank.sizeAsWritten ?? null }
    const { bedId, ...facts } = bedFacts({ ...recorded, resinKind: bed.resinKind ?? 'unknown', tank: { ...written, valves: [], softener } })
    const record = JSON.stringify(facts)
    found.set(record, [...(found.get(record) ?? []), bedId])
  }
  return found
}

/** The planned firm with the sites of these beds alone, and no work done at them. */
function only({ rows, sheets, ...firm }: PlannedFirm, bedIds: readonly string[]): PlannedFirm {
  const tankIds = new Set(rows.bed.filter((bed) => bedIds.includes(bed.id)).map((bed) => bed.tankId))
  const softenerIds = new Set(rows.tank.filter((tank) => tankIds.has(tank.id)).map((tank) => tank.softenerId))
  const softener = rows.softener.filter((one) => softenerIds.has(one.id))
  const siteIds = new Set(softener.map((one) => one.siteId))
  const tank = rows.tank.filter((one) => softenerIds.has(one.softenerId))
  const all = new Set(tank.map((one) => one.id))
  const bed = rows.bed.filter((one) => all.has(one.tankId)).map(({ beganVisitId: _began, endedVisitId: _ended, ...one }) => one)
  const atSite = <T extends { siteId?: string | null }>(list: T[]) => list.filter((one) => siteIds.has(one.siteId ?? ''))
  const ofSoftener = <T extends { softenerId?: string | null }>(list: T[]) => list.filter((one) => softenerIds.has(one.softenerId ?? ''))
  const tenure = atSite(rows.tenure)
  const customerIds = new Set(tenure.map((one) => one.customerId))
  const contact = rows.contact.filter((one) => customerIds.has(one.customerId ?? ''))
  const contactIds = new Set(contact.map((one) => one.id))
  return {
    ...firm,
    sheets: none(sheets),
    rows: {
      ...rows,
      ...{ softener, tank, bed, job: [], inspection: [], waterTest: atSite(rows.waterTest), tenure, contact },
      ...{
        customer: rows.customer.filter((one) => customerIds.has(one.id)),
        consent: rows.consent.filter((one) => contactIds.has(one.contactId)),
        site: rows.site.filter((one) => siteIds.has(one.id)),
        valve: ofSoftener(rows.valve),
        preTreatment: ofSoftener(rows.preTreatment),
      },
    },
  }
}

/**
 * Both demo firms in this test's database, with one softener for each record that a softener of theirs has: whatever is true of these is true of them all,
 * for nothing else goes in. The whole demo takes a minute to load, these take seconds.
 */
export async function loadDistinctSofteners(): Promise<DemoFirm[]> {
  const db = await inspector()
  const firms: DemoFirm[] = []
  for (const [index, plan] of [larkmoor(ANCHOR), brackwater()].entries()) {
    const { name, timeZone, unitSystem, currency, locale, telephone } = plan
    const id = newId()
    const paper: Paper = unitSystem === 'metric' ? 'a4' : 'letter'
    const planned = planFirm(id, plan, SEED + index, ANCHOR, new Map())
    const records = recordsOf(planned)
    const bedIds = [...records.values()].flatMap(([first]) => first ?? [])
    await loadFirm(id, only(planned, bedIds))
    const columns = [id, name, timeZone, unitSystem, currency, locale, telephone, paper]
    await db.query(
      'insert into company (id, name, time_zone, unit_system, currency, locale, telephone, paper) values ($1, $2, $3, $4, $5, $6, $7, $8)',
      columns,
    )
    firms.push({
      company: { id, name, timeZone, unitSystem, currency, locale, paper },
      bedIds,
      records: records.size,
      softeners: planned.rows.softener.length,
    })
  }
  await db.query('analyze')
  await db.end()
  return firms
}
