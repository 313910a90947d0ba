import type { StartExportInput } from '@almanac/contract/exports'
import { EXPORTED } from '@almanac/database/export-columns'
import type { Scope } from '@almanac/database/in-company'
import { runCommand } from '@almanac/database/run-command'
import { AppError } from '@almanac/runtime/errors'
import { newId } from '@almanac/runtime/ids'

/** Asks the worker for an archive of everything; the page shows how far it is. One at a time. */
export async function startExport(scope: Scope & { personId: string }, input: StartExportInput): Promise<{ exportId: string }> {
  return runCommand(scope, 'exports.start', input, async (tx, command) => {
    const { companyId, personId } = scope
    const running = await tx.companyExport.count({ where: { companyId, state: { in: ['waiting', 'writing'] } } })
    if (running > 0) throw new AppError('conflict', 'An export is under way already. No second one was started; it appears on this page.')
    const exportId = newId()
    const row = { companyId, id: exportId, state: 'waiting', createdAt: command.at, createdBy: personId }
    await tx.companyExport.create({ data: { ...row, tablesTotal: Object.keys(EXPORTED).length } })
    await command.audit('started', 'export', exportId)
    await command.announce('export', exportId)
    await command.enqueue('export-company', { exportId })
    return { exportId }
  })
}
