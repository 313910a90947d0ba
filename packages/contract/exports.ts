import { exportStates } from '@almanac/records/export-state'
import { oc } from '@orpc/contract'
import * as z from 'zod'
import { command, Id, Instant, Version } from './shared.ts'

/** One archive of everything, and how far it is. */
export const ExportRow = z.object({
  id: Id,
  version: Version,
  state: z.enum(exportStates),
  tablesDone: z.number().int(),
  tablesTotal: z.number().int(),
  rowsWritten: z.number().int(),
  bytes: z.number().nullable(),
  failure: z.string().nullable(),
  createdAt: Instant,
  finishedAt: Instant.nullable(),
})
export type ExportRow = z.infer<typeof ExportRow>

export const StartExportInput = command({})
export type StartExportInput = z.infer<typeof StartExportInput>

export const exports = {
  list: oc.route({ method: 'GET', path: '/exports' }).output(z.object({ rows: z.array(ExportRow) })),
  start: oc
    .route({ method: 'POST', path: '/exports/start' })
    .input(StartExportInput)
    .output(z.object({ exportId: Id })),
}
