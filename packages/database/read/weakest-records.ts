import { oneOf } from '@almanac/records/choices'
import { questionKeys, worthAskingYears } from '@almanac/records/forecast-question'
import { dayOf } from '../days.ts'
import type { Prisma } from '../generated/client.ts'
import { inCompany, type Scope } from '../in-company.ts'
import { IN_SERVICE } from './in-service.ts'
import { cursorOf, readCursor } from './page-key.ts'
import { tankLine } from './site-lines.ts'

const PARTS = {
  bed: { include: { tank: true } },
  site: {
    include: {
      tenures: {
        where: { toDay: null },
        take: 1,
        include: {
          customer: {
            include: {
              contacts: {
                where: { archivedAt: null, phone: { not: null } },
                include: { consents: { where: { channel: 'phone' } } },
                orderBy: { id: 'asc' },
              },
            },
          },
        },
      },
    },
  },
} satisfies Prisma.BedForecastInclude

/** Beds whose records leave most doubt in their due date, weakest first, with whom to ask. Paged by weakness and id. */
export async function readWeakestRecords(scope: Pick<Scope, 'companyId'>, query: { limit: number; cursor?: string }) {
  const after = query.cursor ? readCursor(query.cursor, 'number') : null
  return inCompany(scope, async (tx) => {
    const found = await tx.bedForecast.findMany({
      where: {
        companyId: scope.companyId,
        weakness: { gt: worthAskingYears },
        bed: IN_SERVICE,
        ...(after ? { OR: [{ weakness: { lt: after.sort } }, { weakness: after.sort, id: { lt: after.id } }] } : {}),
      },
      include: PARTS,
      orderBy: [{ weakness: 'desc' }, { id: 'desc' }],
      take: query.limit + 1,
    })
    const page = found.slice(0, query.limit)
    const last = page.at(-1)
    return {
      rows: page.map(askRow),
      nextCursor: found.length > query.limit && last ? cursorOf(last.weakness, last.id) : null,
    }
  })
}

function askRow(forecast: Prisma.BedForecastGetPayload<{ include: typeof PARTS }>) {
  const { version: _, ...tank } = tankLine(forecast.bed.tank)
  const holder = forecast.site.tenures[0]?.customer
  return {
    bedId: forecast.bedId,
    siteId: forecast.siteId,
    siteLabel: forecast.site.label,
    town: forecast.site.town,
    tank,
    customerName: holder?.name ?? null,
    contacts: (holder?.contacts ?? [])
      .filter((contact) => contact.siteId === null || contact.siteId === forecast.siteId)
      .flatMap((contact) =>
        contact.phone
          ? [
              {
                id: contact.id,
                name: contact.name,
                role: contact.role,
                phone: contact.phone,
                mayCall: contact.consents[0]?.granted ?? null,
              },
            ]
          : [],
      ),
    weaknessYears: forecast.weakness,
    // Several small doubts, none worth asking for alone: the year helps most records.
    question: oneOf(questionKeys, forecast.questionKey) ?? ('beginning' as const),
    refusal: forecast.refusal,
    due10Day: dayOf(forecast.due10Day),
    due90Day: dayOf(forecast.due90Day),
  }
}
