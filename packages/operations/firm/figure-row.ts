import { expectChanged } from '@almanac/database/changed-row'
import type { Tx } from '@almanac/database/client'
import { AppError } from '@almanac/runtime/errors'

type Sent = Record<string, unknown>

/** The row of a figure, in use or put back; null where the firm never set it. */
export function figureRow(tx: Tx, companyId: string, key: string) {
  return tx.firmFigure.findUnique({ where: { companyId_key: { companyId, key } } })
}

/** Refuses a change of a figure that was changed since the screen saw it, with both values. */
export async function refuseStale(tx: Tx, companyId: string, key: string, seenVersion: number, sent: Sent): Promise<void> {
  await expectChanged(0, 'figure', seenVersion, sent, async () => {
    const row = await figureRow(tx, companyId, key)
    return row && { version: row.version, value: row.archivedAt ? null : row.value, note: row.note }
  })
}

/** Updates the row where it still has the version seen; otherwise the conflict with both values. */
export async function updateFigure(
  tx: Tx,
  seen: { companyId: string; key: string; version: number },
  data: { value?: object | number; note: string | null; archivedAt: Date | null },
  sent: Sent,
): Promise<void> {
  const { count } = await tx.firmFigure.updateMany({ where: seen, data: { ...data, version: { increment: 1 } } })
  if (count !== 1) await refuseStale(tx, seen.companyId, seen.key, seen.version, sent)
}

/** Refuses a value with the sentence of the calculation that would use it. */
export function refuseFigure(reason: string): never {
  throw new AppError('invalid', `${reason} Nothing was saved; the value is unchanged.`, { field: 'value' })
}
