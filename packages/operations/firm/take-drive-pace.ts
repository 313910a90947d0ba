import type { TakeDrivesInput } from '@almanac/contract/drive-pace'
import type { Scope } from '@almanac/database/in-company'
import { runCommand } from '@almanac/database/run-command'
import { DRIVE_PACE_KEY } from '@almanac/records/drive-pace'
import { newId } from '@almanac/runtime/ids'
import { figureRow, refuseStale, updateFigure } from './figure-row.ts'

/**
 * Takes over the pace that the screen showed: every plan, place and sheet is worked out with it from then on. It is put back to usual speeds as any other value
 * of the company is.
 *
 * @throws AppError `conflict` where another took it over meanwhile
 */
export async function takeDrivePace(scope: Scope & { personId: string }, input: TakeDrivesInput) {
  const { companyId } = scope
  const { version, pace } = input
  return runCommand(scope, 'firm.take-drives', input, async (tx, command) => {
    const before = await figureRow(tx, companyId, DRIVE_PACE_KEY)
    const id = before?.id ?? newId()
    const sent = { value: pace }
    if (before || version > 0)
      await updateFigure(tx, { companyId, key: DRIVE_PACE_KEY, version }, { value: pace, note: null, archivedAt: null }, sent)
    else {
      const { count } = await tx.firmFigure.createMany({
        data: [{ companyId, id, key: DRIVE_PACE_KEY, value: pace, note: null }],
        skipDuplicates: true,
      })
      if (count === 0) await refuseStale(tx, companyId, DRIVE_PACE_KEY, version, sent)
    }
    const from = before && !before.archivedAt ? before.value : null
    await command.audit('changed', 'firm-figure', id, { field: DRIVE_PACE_KEY, from, to: pace, note: null })
    await command.announce('firm-figure', id, version + 1)
    return { id, version: version + 1 }
  })
}
