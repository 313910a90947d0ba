import 'server-only'
import { readArchived } from '@almanac/database/read/archived-list'
import { archiveCustomer, restoreCustomer } from '@almanac/operations/archive/archive-customer'
import { archiveSite, restoreSite } from '@almanac/operations/archive/archive-site'
import { archiveSoftener, restoreSoftener } from '@almanac/operations/archive/archive-softener'
import { can } from '../procedure.ts'

const change = can('change:site').archive

export const archive = {
  list: change.list.handler(({ context, input }) => readArchived(context.scope, input)),
  softener: change.softener.handler(({ context, input }) => archiveSoftener(context.scope, input)),
  site: change.site.handler(({ context, input }) => archiveSite(context.scope, input)),
  customer: change.customer.handler(({ context, input }) => archiveCustomer(context.scope, input)),
  restoreSoftener: change.restoreSoftener.handler(({ context, input }) => restoreSoftener(context.scope, input)),
  restoreSite: change.restoreSite.handler(({ context, input }) => restoreSite(context.scope, input)),
  restoreCustomer: change.restoreCustomer.handler(({ context, input }) => restoreCustomer(context.scope, input)),
}
