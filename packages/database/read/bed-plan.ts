import type { BedPlanFacts } from '@almanac/contract/bed-choice'
import { beadConditions } from '@almanac/records/bead-condition'
import { oneOf } from '@almanac/records/choices'
import type { EmptiedTank } from '@almanac/records/emptied-tank'
import { notFound } from '@almanac/runtime/errors'
import type { Tx } from '../client.ts'
import { dayOf } from '../days.ts'
import type { Prisma } from '../generated/client.ts'
import { inCompany, type Scope } from '../in-company.ts'
import { bedFacts, TANK_FACTS, TWIN_FACTS, twinOf } from './bed-facts.ts'
import { readBedWater } from './bed-water.ts'
import { readEmptied } from './emptied-tank.ts'
import { NOBODY_TO_CALL, readWhomToCall } from './whom-to-call.ts'

const PARTS = {
  inspections: { where: { beadCondition: { not: null } }, orderBy: [{ day: 'desc' }, { id: 'desc' }], take: 1 },
  tank: {
    include: {
      valves: TANK_FACTS.include.valves,
      softener: {
        include: {
          valves: TANK_FACTS.include.softener.select.valves,
          site: true,
          tanks: TWIN_FACTS.select.tanks,
        },
      },
    },
  },
} satisfies Prisma.BedInclude

const NO_WATER = { source: null, hardnessGpg: null, ironMgL: null, temperatureC: null, disinfectant: null }

/** What a rebed of a bed in service is planned from. Not found for a bed that has come out, or is another company's. */
export async function readBedPlan(scope: Pick<Scope, 'companyId'>, bedId: string): Promise<BedPlanFacts> {
  return inCompany(scope, (tx) => bedPlanIn(tx, scope.companyId, bedId))
}

/** What goes on paper for a crew: of a bed in service, or of one that an earlier visit took out and left the tank empty, with what that visit found. */
export async function readPaperPlan(
  scope: Pick<Scope, 'companyId'>,
  bedId: string,
): Promise<{ plan: BedPlanFacts; emptied: EmptiedTank | null }> {
  return inCompany(scope, async (tx) => {
    const emptied = await readEmptied(tx, scope.companyId, bedId)
    return { emptied, plan: await bedPlanIn(tx, scope.companyId, bedId, { ended: emptied !== null }) }
  })
}

/** The same inside a transaction. */
async function bedPlanIn(tx: Tx, companyId: string, bedId: string, { ended } = { ended: false }): Promise<BedPlanFacts> {
  const where = { companyId, id: bedId, archivedAt: null, ...(ended ? {} : { endedLatest: null }) }
  const bed = await tx.bed.findFirst({ where, include: PARTS })
  if (!bed) throw notFound('bed in service')
  const { tank } = bed
  const { softener } = tank
  const site = softener?.site ?? null
  const water = site && softener ? await readBedWater(tx, companyId, { ...site, siteId: site.id, softenerId: softener.id }) : null
  const whom = (site && (await readWhomToCall(tx, companyId, [site.id])).get(site.id)) ?? NOBODY_TO_CALL
  const stores = await tx.stockItem.findMany({
    where: { companyId, archivedAt: null },
    select: { name: true, kind: true, unit: true, bagFt3: true, resinKind: true, tubeOdIn: true, onHand: true, priceMinor: true },
    orderBy: { name: 'asc' },
    take: 500,
  })
  return {
    bed: bedFacts(bed),
    beganEarliest: dayOf(bed.beganEarliest),
    beganLatest: dayOf(bed.beganLatest),
    beganAsWritten: bed.beganAsWritten,
    softener: softener && {
      label: softener.label,
      twin: twinOf(softener, tank.position),
      installedEarliest: dayOf(softener.installedEarliest),
      installedLatest: dayOf(softener.installedLatest),
      peopleServed: softener.peopleServed,
    },
    site: site && { id: site.id, label: site.label, street: site.street, town: site.town, accessNotes: site.accessNotes, whom },
    water: water ?? NO_WATER,
    beads: oneOf(beadConditions, bed.inspections[0]?.beadCondition),
    stores,
  }
}
