import type { CallBackRow, CallRow } from '@almanac/contract/calls'
import type { CallBackCause, CallComplaint, CallFollowUp } from '@almanac/records/call'
import type { JobKind } from '@almanac/records/job-kind'
import type { Tx } from '../client.ts'
import { dayOf } from '../days.ts'
import type { Prisma } from '../generated/client.ts'
import { readWhomToCall } from './whom-to-call.ts'

export type NameOf = (personId: string) => string | null

export const CALL = {
  site: { select: { label: true, town: true } },
  customer: { select: { name: true } },
  job: { select: { id: true, kind: true } },
} satisfies Prisma.PhoneCallInclude

const jobOf = (job: { id: string; kind: string } | null) => job && { id: job.id, kind: job.kind as JobKind }

/** One call; `nameOf` tells who a colleague is. */
export function callRow(call: Prisma.PhoneCallGetPayload<{ include: typeof CALL }>, nameOf: NameOf): CallRow {
  const { id, siteId, callerName, callerPhone, words, advised, stillSoft } = call
  return {
    ...{ id, siteId, callerName, callerPhone, words, advised, stillSoft },
    at: call.at.toISOString(),
    takenBy: nameOf(call.personId) ?? 'Someone no longer here',
    siteLabel: call.site?.label ?? null,
    town: call.site?.town ?? null,
    customerName: call.customer?.name ?? null,
    sees: call.sees as CallComplaint | null,
    hardSinceDay: dayOf(call.hardSinceDay),
    hardSinceLatest: dayOf(call.hardSinceLatest),
    follows: call.follows as CallFollowUp,
    job: jobOf(call.job),
  }
}

const CALL_BACK = {
  call: true,
  site: { select: { label: true, town: true } },
  job: { select: { id: true, kind: true } },
  visit: { select: { arriveFrom: true, arriveUntil: true } },
} satisfies Prisma.CallBackInclude

/** More stand on no list that anybody could work through. */
const MOST = 300

/** Who is still to be called, due first; of one site where it is given. */
export async function openCallBacks(tx: Tx, companyId: string, siteId?: string): Promise<CallBackRow[]> {
  const found = await tx.callBack.findMany({
    where: { companyId, state: 'open', ...(siteId ? { siteId } : {}) },
    include: CALL_BACK,
    orderBy: [{ dueDay: 'asc' }, { id: 'asc' }],
    take: MOST,
  })
  const whom = await readWhomToCall(
    tx,
    companyId,
    found.flatMap((one) => one.siteId ?? []),
  )
  return found.map(({ id, version, cause, dueDay, call, site, siteId, note, job, visit, outcome }) => ({
    ...{ id, version, siteId, note },
    cause: cause as CallBackCause,
    dueDay: dayOf(dueDay),
    siteLabel: site?.label ?? null,
    town: site?.town ?? null,
    whom: (siteId && whom.get(siteId)) || null,
    callerName: call?.callerName ?? null,
    callerPhone: call?.callerPhone ?? null,
    sees: (call?.sees ?? null) as CallComplaint | null,
    words: call?.words ?? null,
    job: jobOf(job),
    promised:
      visit?.arriveFrom && visit.arriveUntil ? { from: visit.arriveFrom.toISOString(), until: visit.arriveUntil.toISOString() } : null,
    tried: outcome === 'no-answer',
  }))
}
