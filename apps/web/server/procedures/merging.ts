import 'server-only'
import { readMergings, readTownsOfSites } from '@almanac/database/read/mergings'
import { mergeCustomers, mergeSites } from '@almanac/operations/merging/merge-records'
import { mergeSupplies } from '@almanac/operations/merging/merge-supplies'
import { mergeTowns } from '@almanac/operations/merging/merge-towns'
import { previewUndo } from '@almanac/operations/merging/preview-undo'
import { undoMerging } from '@almanac/operations/merging/undo-merging'
import { can } from '../procedure.ts'

const change = can('change:site').merging

export const merging = {
  list: change.list.handler(({ context, input }) => readMergings(context.scope, input)),
  townsOfSites: change.townsOfSites.handler(({ context }) => readTownsOfSites(context.scope)),
  customers: change.customers.handler(({ context, input }) => mergeCustomers(context.scope, input)),
  sites: change.sites.handler(({ context, input }) => mergeSites(context.scope, input)),
  supplies: change.supplies.handler(({ context, input }) => mergeSupplies(context.scope, input)),
  towns: change.towns.handler(({ context, input }) => mergeTowns(context.scope, input)),
  beforeUndo: change.beforeUndo.handler(({ context, input }) => previewUndo(context.scope, input.mergingId)),
  undo: change.undo.handler(({ context, input }) => undoMerging(context.scope, input)),
}
