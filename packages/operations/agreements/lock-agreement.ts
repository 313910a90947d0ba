import { expectChanged } from '@almanac/database/changed-row'
import type { Tx } from '@almanac/database/client'
import { dayOf } from '@almanac/database/days'
import { lockRows } from '@almanac/database/sql/lock-rows'
import { AppError, notFound } from '@almanac/runtime/errors'

/** Locks an agreement until the transaction ends; 409 where it is no longer as the screen saw it, or has ended. */
export async function lockAgreement(tx: Tx, companyId: string, { agreementId: id, version }: { agreementId: string; version: number }) {
  await lockRows(tx, companyId, 'agreement', [id])
  const found = await tx.agreement.findFirst({
    where: { companyId, id, archivedAt: null },
    include: { terms: { orderBy: { fromDay: 'desc' }, take: 1 } },
  })
  if (!found) throw notFound('agreement')
  await expectChanged(found.version === version ? 1 : 0, 'agreement', version, {}, async () => ({ id, version: found.version }))
  if (found.endedDay !== null) throw new AppError('conflict', 'This agreement has ended. Nothing was changed; add a new one.')
  const [term] = found.terms
  return { ...found, firstDay: dayOf(found.firstDay), term: term && { fromDay: dayOf(term.fromDay), untilDay: dayOf(term.untilDay) } }
}
