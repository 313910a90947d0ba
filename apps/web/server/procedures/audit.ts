import 'server-only'
import { readAudit } from '@almanac/database/read/audit-list'
import { memberNames } from '@almanac/identity/people'
import { can } from '../procedure.ts'

export const audit = {
  list: can('manage:company').audit.list.handler(async ({ context, input }) => {
    const names = await memberNames(context.scope.companyId)
    return readAudit(context.scope, input, (personId) => names.get(personId) ?? null)
  }),
}
