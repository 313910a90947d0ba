import type { BeadCondition } from '@almanac/records/bead-condition'
import { notFound } from '@almanac/runtime/errors'
import { dayOf } from '../days.ts'
import type { Prisma } from '../generated/client.ts'
import { inCompany, type Scope } from '../in-company.ts'
import { bedFacts } from './bed-facts.ts'
import { readStoredForecast } from './bed-forecast.ts'
import { readBedWater } from './bed-water.ts'
import { BED_LINE, bedLine, byDay, jobLine, OPEN_JOBS, tankLine } from './site-lines.ts'
import { NOBODY_TO_CALL, readWhomToCall } from './whom-to-call.ts'

const PARTS = {
  tank: {
    include: {
      beds: { where: { archivedAt: null }, include: BED_LINE },
      valves: { where: { archivedAt: null }, orderBy: { id: 'asc' }, take: 1 },
      softener: {
        include: {
          valves: { where: { archivedAt: null, tankId: null }, orderBy: { id: 'asc' }, take: 1 },
          site: { select: { id: true, label: true, town: true, waterSupplyId: true } },
          _count: { select: { tanks: { where: { archivedAt: null } } } },
        },
      },
    },
  },
  forecast: true,
  inspections: { orderBy: [{ day: 'desc' }, { id: 'desc' }], take: 50 },
  jobs: OPEN_JOBS,
  calls: { where: { hardSinceDay: { not: null } }, orderBy: [{ at: 'desc' }, { id: 'desc' }], take: 1 },
} satisfies Prisma.BedInclude

/** What a customer says of its water, unless somebody saw the bed working since. */
function heardHard({ calls: [call], lastSeenDay }: Prisma.BedGetPayload<{ include: typeof PARTS }>) {
  const earliest = dayOf(call?.hardSinceDay ?? null)
  if (!call || earliest === null) return null
  const latest = dayOf(call.hardSinceLatest) ?? earliest
  const seen = dayOf(lastSeenDay)
  return seen !== null && seen > latest ? null : { earliest, latest, calledAt: call.at.toISOString() }
}

/** A bed with its tank, valve, place, inspections, other beds of the tank, open jobs and stored forecast. */
export async function readBedPage(scope: Pick<Scope, 'companyId'>, bedId: string) {
  return inCompany(scope, async (tx) => {
    const { companyId } = scope
    const bed = await tx.bed.findFirst({ where: { companyId, id: bedId, archivedAt: null }, include: PARTS })
    if (!bed) throw notFound('bed')
    const { tank } = bed
    const { softener } = tank
    const valve = tank.valves[0] ?? softener?.valves[0] ?? null
    const water = softener && (await readBedWater(tx, companyId, { ...softener.site, siteId: softener.site.id, softenerId: softener.id }))
    const whom = (softener && (await readWhomToCall(tx, companyId, [softener.site.id])).get(softener.site.id)) ?? NOBODY_TO_CALL
    const { due10Day: _a, due50Day: _b, due90Day: _c, chance12Months: _d, ...line } = bedLine(bed)
    return {
      ...line,
      version: bed.version,
      gravelLb: bed.gravelLb,
      tubeCutIn: bed.tubeCutIn,
      entered: bed.entered as Record<string, { value: number; unit: string }>,
      sources: { ...(tank.factSources as Record<string, string>), ...(bed.factSources as Record<string, string>) },
      tank: tankLine(tank),
      valve: valve && {
        id: valve.id,
        version: valve.version,
        backwashGpm: valve.backwashGpm,
        tubeOdIn: valve.tubeOdIn,
        cardId: valve.cardId,
      },
      softener: softener && { id: softener.id, label: softener.label, tankCount: softener._count.tanks },
      site: softener && { id: softener.site.id, label: softener.site.label, town: softener.site.town, whom },
      facts: bedFacts(bed),
      waterTemperatureC: water?.temperatureC ?? null,
      inspections: bed.inspections.map((one) => ({
        id: one.id,
        day: dayOf(one.day),
        beadCondition: one.beadCondition as BeadCondition | null,
        capacityShare: one.capacityShare,
        moistureShare: one.moistureShare,
        pressureDropPsi: one.pressureDropPsi,
        notes: one.notes,
        source: one.source,
      })),
      otherBeds: tank.beds
        .filter((one) => one.id !== bed.id)
        .map(bedLine)
        .sort((a, b) => byDay(b.endedLatest ?? '9999', a.endedLatest ?? '9999')),
      openJobs: bed.jobs.map(jobLine),
      heardHard: bed.endedLatest === null ? heardHard(bed) : null,
      forecast: bed.endedLatest === null && bed.forecast ? readStoredForecast(bed.forecast) : null,
    }
  })
}
