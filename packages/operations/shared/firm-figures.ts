import type { Tx } from '@almanac/database/client'
import { DRIVE_PACE_KEY } from '@almanac/records/drive-pace'
import type { FirmFigures } from '@almanac/softener/firm/firm-figures'
import { mergeFigures } from '@almanac/softener/firm/merge-figures'

/** The firm's figures as they hold now: the usual ones with its own in their places. */
export async function firmFigures(tx: Tx, companyId: string): Promise<FirmFigures> {
  const rows = await tx.firmFigure.findMany({
    where: { companyId, archivedAt: null, key: { not: DRIVE_PACE_KEY } },
    select: { key: true, value: true },
  })
  return mergeFigures(rows).figures
}
