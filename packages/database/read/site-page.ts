import type { Arrangement } from '@almanac/records/arrangement'
import type { Channel } from '@almanac/records/channel'
import type { ConsentSource } from '@almanac/records/consent-source'
import { otherPhonesOf } from '@almanac/records/contact-phones'
import type { ContactRole } from '@almanac/records/contact-role'
import type { RecordedDisinfectant } from '@almanac/records/disinfectant'
import type { Language } from '@almanac/records/language'
import type { PreTreatmentKind } from '@almanac/records/pre-treatment-kind'
import type { SupplyKind } from '@almanac/records/supply-kind'
import { notFound } from '@almanac/runtime/errors'
import type { Tx } from '../client.ts'
import { dayOf } from '../days.ts'
import type { Prisma } from '../generated/client.ts'
import { inCompany, type Scope } from '../in-company.ts'
import { siteHours } from './job-rows.ts'
import { BED_LINE, bedLine, byDay, jobLine, OPEN_JOBS, tankLine } from './site-lines.ts'
import { whomToCall } from './whom-to-call.ts'

const SOFTENERS = {
  where: { archivedAt: null },
  orderBy: { id: 'asc' },
  include: {
    tanks: {
      where: { archivedAt: null },
      orderBy: { position: 'asc' },
      include: { beds: { where: { archivedAt: null }, include: BED_LINE } },
    },
    valves: { where: { archivedAt: null }, orderBy: { id: 'asc' }, take: 1 },
    preTreatments: { where: { archivedAt: null }, orderBy: { id: 'asc' } },
  },
} satisfies Prisma.Site$softenersArgs

const PARTS = {
  tenures: { include: { customer: { include: { _count: { select: { tenures: { where: { toDay: null } } } } } } } },
  softeners: SOFTENERS,
  jobs: OPEN_JOBS,
  waterSupply: { include: { periods: { where: { withdrawnAt: null }, orderBy: { fromDay: { sort: 'desc', nulls: 'last' } }, take: 1 } } },
} satisfies Prisma.SiteInclude

/** One site with who holds it, how to reach them, its softeners with all their beds, and what is still to be done there. */
export async function readSitePage(scope: Pick<Scope, 'companyId'>, siteId: string) {
  return inCompany(scope, async (tx) => {
    const { companyId } = scope
    const site = await tx.site.findFirst({ where: { companyId, id: siteId, archivedAt: null }, include: PARTS })
    if (!site) throw notFound('site')
    const tenures = site.tenures
      .map((tenure) => ({
        id: tenure.id,
        version: tenure.version,
        fromDay: dayOf(tenure.fromDay),
        toDay: dayOf(tenure.toDay),
        customer: {
          id: tenure.customer.id,
          version: tenure.customer.version,
          name: tenure.customer.name,
          reference: tenure.customer.reference,
          notes: tenure.customer.notes,
          sites: tenure.customer._count.tenures,
        },
      }))
      .sort((a, b) => byDay(b.toDay ?? '9999', a.toDay ?? '9999'))
    const present = tenures[0]?.toDay === null ? tenures[0] : null
    const supply = site.waterSupply
    const contacts = present ? await contactsOf(tx, companyId, siteId, present.customer.id) : []
    return {
      id: site.id,
      version: site.version,
      label: site.label,
      street: site.street,
      town: site.town,
      region: site.region,
      visitHours: siteHours(site),
      place: site.latitude === null || site.longitude === null ? null : { latitude: site.latitude, longitude: site.longitude },
      postcode: site.postcode,
      accessNotes: site.accessNotes,
      notes: site.notes,
      supply: supply && {
        id: supply.id,
        name: supply.name,
        kind: supply.kind as SupplyKind,
        disinfectant: (supply.periods[0]?.disinfectant as RecordedDisinfectant | undefined) ?? null,
        residualMgL: supply.periods[0]?.residualMgL ?? null,
      },
      tenures,
      contacts,
      whom: whomToCall(
        present?.customer.name ?? null,
        contacts.map((one) => ({ ...one, mayCall: one.consents.find(({ channel }) => channel === 'phone')?.granted ?? null })),
      ),
      softeners: site.softeners.map(softenerOf),
      openJobs: site.jobs.map(jobLine),
    }
  })
}

/** The present holder's contacts: those for all their sites and those for this one. */
async function contactsOf(tx: Tx, companyId: string, siteId: string, customerId: string) {
  const contacts = await tx.contact.findMany({
    where: { companyId, customerId, archivedAt: null, OR: [{ siteId: null }, { siteId }] },
    include: { consents: { orderBy: { channel: 'asc' } } },
    orderBy: { id: 'asc' },
  })
  return contacts.map((contact) => ({
    id: contact.id,
    version: contact.version,
    customerId: contact.customerId,
    siteId: contact.siteId,
    role: contact.role as ContactRole,
    name: contact.name,
    phone: contact.phone,
    otherPhones: otherPhonesOf(contact),
    email: contact.email,
    emailIsDead: contact.email !== null && contact.email === contact.deadEmail,
    language: contact.language as Language | null,
    consents: contact.consents.map((consent) => ({
      version: consent.version,
      channel: consent.channel as Channel,
      granted: consent.granted,
      source: consent.source as ConsentSource,
      sinceDay: dayOf(consent.sinceDay),
    })),
  }))
}

function softenerOf(softener: Prisma.SoftenerGetPayload<{ include: typeof SOFTENERS.include }>) {
  return {
    id: softener.id,
    version: softener.version,
    label: softener.label,
    location: softener.location,
    arrangement: softener.arrangement as Arrangement,
    installedEarliest: dayOf(softener.installedEarliest),
    installedLatest: dayOf(softener.installedLatest),
    installedAsWritten: softener.installedAsWritten,
    peopleServed: softener.peopleServed,
    valveCardId: softener.valves[0]?.cardId ?? null,
    notes: softener.notes,
    condemnedDay: dayOf(softener.condemnedDay),
    tanks: softener.tanks.map((tank) => ({
      ...tankLine(tank),
      // The bed in service first, then the ended ones, the latest first.
      beds: tank.beds.map(bedLine).sort((a, b) => byDay(b.endedLatest ?? '9999', a.endedLatest ?? '9999')),
    })),
    preTreatments: softener.preTreatments.map((one) => ({
      id: one.id,
      version: one.version,
      kind: one.kind as PreTreatmentKind,
      fromDay: dayOf(one.fromDay),
      toDay: dayOf(one.toDay),
      source: one.source,
    })),
  }
}
