import type { CloseOutInput } from '@almanac/contract/visits'
import { oneOf } from '@almanac/records/choices'
import { contactRoles } from '@almanac/records/contact-role'
import type { JobKind } from '@almanac/records/job-kind'
import { type Language, languages } from '@almanac/records/language'
import type { Paper } from '@almanac/records/paper'
import type { RecordedValveControl } from '@almanac/records/valve-control'
import type { VisitOutcome } from '@almanac/records/visit-outcome'
import { AppError, notFound } from '@almanac/runtime/errors'
import type { UnitSystem } from '@almanac/units/unit-system'
import type { Tx } from '../client.ts'
import { dayOf } from '../days.ts'
import type { Prisma } from '../generated/client.ts'
import { inCompany, type Scope } from '../in-company.ts'
import { BED_FACTS, bedFacts, TWIN_FACTS, twinOf } from './bed-facts.ts'
import { readBedWater } from './bed-water.ts'
import { PROOF_PARTS, proofOf } from './visit-proof.ts'

const BED = { ...BED_FACTS, forecast: { select: { due10Day: true, due90Day: true } } } satisfies Prisma.BedInclude
const PARTS = {
  ...PROOF_PARTS,
  crewDay: { select: { day: true } },
  assignments: { where: { released: false }, select: { colleague: { select: { name: true } } } },
  bedsBegan: { include: BED, take: 1 },
  bedsEnded: { select: { id: true }, take: 1 },
  job: {
    include: {
      site: true,
      bed: { include: BED },
      softener: { include: { tanks: TWIN_FACTS.select.tanks, valves: { where: { archivedAt: null }, orderBy: { id: 'asc' } } } },
    },
  },
} satisfies Prisma.VisitInclude

/** What a close-out of any release may hold; older ones know less. */
type CloseOut = Partial<Pick<CloseOutInput, 'checks' | 'measurements' | 'partsUsed' | 'oldBed' | 'newBed' | 'workDay' | 'beside'>>

type Holder = { customerId: string | null; name: string | null; language: Language | null }

/** Who held a site on a day, and in which of our languages they read; null where nobody did, or they were erased. */
export async function holderOn(tx: Tx, companyId: string, siteId: string, day: Date): Promise<Holder> {
  const tenure = await tx.tenure.findFirst({
    where: {
      companyId,
      siteId,
      AND: [{ OR: [{ fromDay: null }, { fromDay: { lte: day } }] }, { OR: [{ toDay: null }, { toDay: { gte: day } }] }],
    },
    include: { customer: { include: { contacts: { where: { archivedAt: null }, orderBy: { id: 'asc' } } } } },
    orderBy: { fromDay: { sort: 'desc', nulls: 'last' } },
  })
  if (!tenure || tenure.customer.erasedAt) return { customerId: null, name: null, language: null }
  const { name, contacts } = tenure.customer
  const readers = contacts
    .filter((one) => one.language !== null && (one.siteId === null || one.siteId === siteId))
    .sort((a, b) => contactRoles.findIndex((role) => role === a.role) - contactRoles.findIndex((role) => role === b.role))
  return { customerId: tenure.customerId, name, language: oneOf(languages, readers[0]?.language) }
}

/** All that the record says of a visit that was closed, for its report. Not found for another company's; a visit that isn't closed has none yet. */
export async function readServiceReport(scope: Pick<Scope, 'companyId'>, visitId: string) {
  const { companyId } = scope
  return inCompany(scope, async (tx) => {
    const visit = await tx.visit.findUnique({ where: { companyId_id: { companyId, id: visitId } }, include: PARTS })
    if (!visit || visit.state === 'offered') throw notFound('visit')
    if (visit.state !== 'closed')
      throw new AppError(
        'conflict',
        'This visit isn’t closed out yet, so it has no report. Nothing was changed; open it again after the close-out.',
      )
    const { job } = visit
    const company = await tx.company.findUniqueOrThrow({ where: { id: companyId } })
    const bed = visit.bedsBegan[0] ?? (visit.bedsEnded.length > 0 ? null : job.bed)
    const valves = job.softener?.valves ?? []
    const tankId = (bed ?? job.bed)?.tankId
    const valve = valves.find((one) => one.tankId === tankId) ?? valves.find((one) => one.tankId === null) ?? null
    const { temperatureC } = await readBedWater(tx, companyId, { ...job.site, siteId: job.siteId, softenerId: job.softenerId })
    return {
      company: {
        ...{ locale: company.locale, currency: company.currency },
        ...{ timeZone: company.timeZone, unitSystem: company.unitSystem as UnitSystem, paper: company.paper as Paper },
      },
      holder: await holderOn(tx, companyId, job.siteId, visit.crewDay.day),
      site: { label: job.site.label, street: job.site.street, town: job.site.town },
      softenerLabel: job.softener?.label ?? null,
      twin: twinOf(job.softener, (bed ?? job.bed)?.tank.position ?? null),
      kind: job.kind as JobKind,
      outcome: visit.outcome as VisitOutcome,
      day: dayOf(visit.crewDay.day),
      people: visit.assignments.map((one) => one.colleague.name).sort(),
      closeOut: (visit.closeOut ?? {}) as CloseOut,
      bed: bed && bedFacts(bed),
      temperatureC,
      valve: valve && {
        label: valve.label,
        cardId: valve.cardId,
        control: valve.control as RecordedValveControl,
        backwashGpm: valve.backwashGpm,
      },
      forecast: bed?.forecast ? { due10Day: dayOf(bed.forecast.due10Day), due90Day: dayOf(bed.forecast.due90Day) } : null,
      ...proofOf(visit),
    }
  })
}

export type ServiceReportRecord = Awaited<ReturnType<typeof readServiceReport>>
