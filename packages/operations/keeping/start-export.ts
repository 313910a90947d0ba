import type { StartExportInput } from '@almanac/contract/exports'
import type { Tx } from '@almanac/database/client'
import { EXPORTED } from '@almanac/database/export-columns'
import type { Scope } from '@almanac/database/in-company'
import { type Command, runCommand } from '@almanac/database/run-command'
import { AppError } from '@almanac/runtime/errors'
import { newId } from '@almanac/runtime/ids'

const UNDER_WAY = { state: { in: ['waiting', 'writing'] } }

/** Asks for an archive of everything inside a command of its own; one that is under way already is as good. Answers its id. */
export async function startExportIn(tx: Tx, command: Command): Promise<string> {
  const { companyId, personId, at } = command
  const running = await tx.companyExport.findFirst({ where: { companyId, ...UNDER_WAY }, select: { id: true } })
  if (running) return running.id
  const exportId = newId()
  const row = { companyId, id: exportId, state: 'waiting', createdAt: at, createdBy: personId ?? '' }
  await tx.companyExport.create({ data: { ...row, tablesTotal: Object.keys(EXPORTED).length } })
  await command.audit('started', 'export', exportId)
  await command.announce('export', exportId)
  await command.enqueue('export-company', { exportId })
  return exportId
}

/** Asks the worker for an archive of everything; the page shows how far it is. One at a time. */
export async function startExport(scope: Scope & { personId: string }, input: StartExportInput): Promise<{ exportId: string }> {
  return runCommand(scope, 'exports.start', input, async (tx, command) => {
    const running = await tx.companyExport.count({ where: { companyId: scope.companyId, ...UNDER_WAY } })
    if (running > 0) throw new AppError('conflict', 'An export is under way already. No second one was started; it appears on this page.')
    return { exportId: await startExportIn(tx, command) }
  })
}
