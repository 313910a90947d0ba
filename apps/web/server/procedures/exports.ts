import 'server-only'
import { readExports } from '@almanac/database/read/company-exports'
import { startExport } from '@almanac/operations/keeping/start-export'
import { can } from '../procedure.ts'

const manage = can('manage:company').exports

export const exports = {
  list: manage.list.handler(({ context }) => readExports(context.scope)),
  start: manage.start.handler(({ context, input }) => startExport(context.scope, input)),
}
