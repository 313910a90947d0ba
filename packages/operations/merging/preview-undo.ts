import type { UndoPreview } from '@almanac/contract/merging'
import { inCompany, type Scope } from '@almanac/database/in-company'
import { readMergedRows } from '@almanac/database/read/merged-rows'
import type { MovedFrom } from '@almanac/database/sql/move-records'
import { notFound } from '@almanac/runtime/errors'
import { whyNotUndone } from './why-not-undone.ts'

/** What undoing a merging would do, before anybody presses it: what goes back, what stays because it came later, and what is elsewhere by now. */
export async function previewUndo(scope: Pick<Scope, 'companyId'>, mergingId: string): Promise<UndoPreview> {
  const { companyId } = scope
  return inCompany(scope, async (tx) => {
    const merging = await tx.merging.findFirst({ where: { companyId, id: mergingId } })
    if (!merging) throw notFound('merging')
    const refused = await whyNotUndone(tx, merging)
    return { refused, ...(await readMergedRows(tx, companyId, { ...merging, moved: merging.moved as MovedFrom[] })) }
  })
}
