import 'server-only'
import { closeCompany, keepCompany } from '@almanac/operations/keeping/close-company'
import { can } from '../procedure.ts'

const manage = can('manage:company').closing

export const closing = {
  close: manage.close.handler(({ context, input }) => closeCompany(context.scope, input)),
  keep: manage.keep.handler(({ context, input }) => keepCompany(context.scope, input)),
}
