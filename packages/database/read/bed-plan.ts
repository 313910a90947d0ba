import type { BedPlanFacts } from '@almanac/contract/bed-choice'
import { beadConditions } from '@almanac/records/bead-condition'
import { oneOf } from '@almanac/records/choices'
import type { RecordedDisinfectant } from '@almanac/records/disinfectant'
import { notFound } from '@almanac/runtime/errors'
import type { Tx } from '../client.ts'
import { dayOf } from '../days.ts'
import type { Prisma } from '../generated/client.ts'
import { inCompany, type Scope } from '../in-company.ts'

const PARTS = {
  inspections: { where: { beadCondition: { not: null } }, orderBy: [{ day: 'desc' }, { id: 'desc' }], take: 1 },
  tank: {
    include: {
      valves: { where: { archivedAt: null }, take: 1 },
      softener: {
        include: {
          valves: { where: { archivedAt: null, tankId: null }, take: 1 },
          site: {
            include: {
              waterSupply: {
                include: { periods: { where: { withdrawnAt: null }, orderBy: { fromDay: { sort: 'desc', nulls: 'last' } }, take: 1 } },
              },
            },
          },
        },
      },
    },
  },
} satisfies Prisma.BedInclude

/** What a rebed of a bed in service is planned from. Not found for a bed that has come out, or is another company's. */
export async function readBedPlan(scope: Pick<Scope, 'companyId'>, bedId: string): Promise<BedPlanFacts> {
  return inCompany(scope, (tx) => bedPlanIn(tx, scope.companyId, bedId))
}

/** The same inside a transaction. */
async function bedPlanIn(tx: Tx, companyId: string, bedId: string): Promise<BedPlanFacts> {
  const bed = await tx.bed.findFirst({ where: { companyId, id: bedId, archivedAt: null, endedLatest: null }, include: PARTS })
  if (!bed) throw notFound('bed in service')
  const { tank } = bed
  const { softener } = tank
  const valve = tank.valves[0] ?? softener?.valves[0] ?? null
  const site = softener?.site ?? null
  const period = site?.waterSupply?.periods[0]
  const test = site && softener ? await latestTest(tx, companyId, site.id, softener.id) : null
  const stores = await tx.stockItem.findMany({
    where: { companyId, archivedAt: null },
    select: { name: true, kind: true, unit: true, bagFt3: true, resinKind: true, onHand: true, priceMinor: true },
    orderBy: { name: 'asc' },
    take: 500,
  })
  return {
    bedId: bed.id,
    resinKind: bed.resinKind as BedPlanFacts['resinKind'],
    volumeFt3: bed.volumeFt3,
    gravelLb: bed.gravelLb,
    tubeCutIn: bed.tubeCutIn,
    beganEarliest: dayOf(bed.beganEarliest),
    beganLatest: dayOf(bed.beganLatest),
    beganAsWritten: bed.beganAsWritten,
    tank: {
      diameterIn: tank.diameterIn,
      heightIn: tank.heightIn,
      nominalGrains: tank.nominalGrains,
      sizeAsWritten: tank.sizeAsWritten,
    },
    valve: valve && { cardId: valve.cardId, tubeOdIn: valve.tubeOdIn, backwashGpm: valve.backwashGpm },
    softener: softener && {
      label: softener.label,
      installedEarliest: dayOf(softener.installedEarliest),
      installedLatest: dayOf(softener.installedLatest),
      peopleServed: softener.peopleServed,
    },
    site: site && { id: site.id, label: site.label, street: site.street, town: site.town, accessNotes: site.accessNotes },
    water: {
      source: site?.waterSupply ? (site.waterSupply.kind === 'private-well' ? 'private-well' : 'town') : null,
      hardnessGpg: test?.hardnessGpg ?? period?.hardnessGpg ?? null,
      ironMgL: test?.ironMgL ?? period?.ironMgL ?? null,
      temperatureC: period?.temperatureC ?? null,
      disinfectant: (period?.disinfectant as RecordedDisinfectant | undefined) ?? null,
    },
    beads: oneOf(beadConditions, bed.inspections[0]?.beadCondition),
    stores,
  }
}

/** Hardness and iron before the softener as last measured there; a test without hardness says nothing of it. */
function latestTest(tx: Tx, companyId: string, siteId: string, softenerId: string) {
  return tx.waterTest.findFirst({
    where: {
      ...{ companyId, siteId, withdrawnAt: null, hardnessGpg: { not: null } },
      ...{ point: { in: ['raw', 'softener-inlet'] }, OR: [{ softenerId: null }, { softenerId }] },
    },
    orderBy: [{ day: 'desc' }, { id: 'desc' }],
    select: { hardnessGpg: true, ironMgL: true },
  })
}
