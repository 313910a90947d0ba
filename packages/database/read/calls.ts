import type { CallSite } from '@almanac/contract/calls'
import { oneOf } from '@almanac/records/choices'
import { questionKeys, worthAskingYears } from '@almanac/records/forecast-question'
import { notFound } from '@almanac/runtime/errors'
import { dayOf } from '../days.ts'
import { inCompany, type Scope } from '../in-company.ts'
import { CALL, callRow, type NameOf, openCallBacks } from './call-rows.ts'
import { IN_SERVICE } from './in-service.ts'
import { lastRebedAt } from './last-rebed.ts'
import { cursorOf, readCursor } from './page-key.ts'
import { NOBODY_TO_CALL, readWhomToCall } from './whom-to-call.ts'

/** How many calls a site's page shows: about a screen. */
const SHOWN_AT_SITE = 20

/** Calls, the last first; `nameOf` tells who a colleague is. Paged by id, which are made in order of time. */
export async function readCalls(scope: Pick<Scope, 'companyId'>, query: { limit: number; cursor?: string }, nameOf: NameOf) {
  const { companyId } = scope
  const after = query.cursor ? readCursor(query.cursor, 'string') : null
  return inCompany(scope, async (tx) => {
    const found = await tx.phoneCall.findMany({
      where: { companyId, ...(after ? { id: { lt: after.id } } : {}) },
      include: CALL,
      orderBy: { id: 'desc' },
      take: query.limit + 1,
    })
    const rows = found.slice(0, query.limit)
    const last = rows.at(-1)
    return {
      rows: rows.map((row) => callRow(row, nameOf)),
      nextCursor: found.length > query.limit && last ? cursorOf(last.at.toISOString(), last.id) : null,
    }
  })
}

/** Whom to call, due first. */
export const readCallBacks = (scope: Pick<Scope, 'companyId'>) => inCompany(scope, (tx) => openCallBacks(tx, scope.companyId))

/** What a call about a site wants to know: whom, which softener, what to ask, what was said before and what is still owed. */
export async function readCallSite(scope: Pick<Scope, 'companyId'>, siteId: string, nameOf: NameOf): Promise<CallSite> {
  const { companyId } = scope
  return inCompany(scope, async (tx) => {
    const site = await tx.site.findFirst({
      where: { companyId, id: siteId, archivedAt: null },
      include: {
        softeners: {
          where: { archivedAt: null },
          orderBy: { id: 'asc' },
          select: {
            id: true,
            label: true,
            tanks: {
              where: { archivedAt: null },
              select: { beds: { where: IN_SERVICE, include: { forecast: { select: { questionKey: true, weakness: true } } } } },
            },
          },
        },
        calls: { include: CALL, orderBy: { id: 'desc' }, take: SHOWN_AT_SITE },
      },
    })
    if (!site) throw notFound('site')
    return {
      siteId,
      siteLabel: site.label,
      town: site.town,
      whom: (await readWhomToCall(tx, companyId, [siteId])).get(siteId) ?? NOBODY_TO_CALL,
      softeners: site.softeners.map(({ id, label, tanks }) => {
        const beds = tanks.flatMap((tank) => tank.beds)
        const weakest = beds.map((bed) => bed.forecast).sort((a, b) => (b?.weakness ?? 0) - (a?.weakness ?? 0))[0]
        const worth = weakest && weakest.weakness > worthAskingYears
        return {
          ...{ id, label },
          bedId: beds.length === 1 ? (beds[0]?.id ?? null) : null,
          lastSeenDay: beds.reduce<string | null>((last, bed) => {
            const day = dayOf(bed.lastSeenDay)
            return day !== null && (last === null || day > last) ? day : last
          }, null),
          question: worth ? (oneOf(questionKeys, weakest.questionKey) ?? null) : null,
        }
      }),
      lastRebed: await lastRebedAt(tx, companyId, siteId),
      calls: site.calls.map((call) => callRow(call, nameOf)),
      callBacks: await openCallBacks(tx, companyId, siteId),
    }
  })
}
