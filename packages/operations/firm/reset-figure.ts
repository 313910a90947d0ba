import type { ResetFigureInput } from '@almanac/contract/firm'
import type { Scope } from '@almanac/database/in-company'
import { runCommand } from '@almanac/database/run-command'
import { AppError, notFound } from '@almanac/runtime/errors'
import { figureRow, updateFigure } from './figure-row.ts'

/** Puts a figure back to the usual one; the firm's own stays in the history. A card of the firm's own valve goes out of use. */
export async function resetFigure(scope: Scope & { personId: string }, input: ResetFigureInput) {
  const { companyId } = scope
  const { key, version } = input
  const note = input.note || null
  return runCommand(scope, 'firm.reset-figure', input, async (tx, command) => {
    const before = await figureRow(tx, companyId, key)
    if (!before) throw notFound('figure of your company’s own')
    await updateFigure(tx, { companyId, key, version }, { note, archivedAt: command.at }, { value: null, note })
    if (before.archivedAt) throw new AppError('conflict', 'This value is already the default. Nothing was changed.')
    await command.audit('put back to usual', 'firm-figure', before.id, { field: key, from: before.value, to: null, note })
    await command.announce('firm-figure', before.id, version + 1)
    return { id: before.id, key, version: version + 1 }
  })
}
