import 'server-only'
import { readImport, readImports } from '@almanac/database/read/import-batches'
import { checkImport } from '@almanac/operations/imports/check-import'
import { discardDraft } from '@almanac/operations/imports/discard-draft'
import { queueImport } from '@almanac/operations/imports/queue-import'
import { readAgain } from '@almanac/operations/imports/read-again'
import { showRows } from '@almanac/operations/imports/show-rows'
import { previewUndoImport, undoImport } from '@almanac/operations/imports/undo-import'
import { can } from '../procedure.ts'

const run = can('run:import').imports

export const imports = {
  list: run.list.handler(({ context, input }) => readImports(context.scope, input)),
  batch: run.batch.handler(({ context, input }) => readImport(context.scope, input.batchId)),
  rows: run.rows.handler(({ context, input }) => showRows(context.scope, input)),
  check: run.check.handler(({ context, input }) => checkImport(context.scope, input)),
  apply: run.apply.handler(({ context, input }) => queueImport(context.scope, input)),
  readAgain: run.readAgain.handler(({ context, input }) => readAgain(context.scope, input)),
  discard: run.discard.handler(({ context, input }) => discardDraft(context.scope, input)),
  beforeUndo: run.beforeUndo.handler(({ context, input }) => previewUndoImport(context.scope, input.batchId)),
  undo: run.undo.handler(({ context, input }) => undoImport(context.scope, input)),
}
