import 'server-only'
import { readGuides } from '@almanac/database/read/guides'
import { makePublicToken } from '@almanac/identity/public-token'
import { beginGuide } from '@almanac/operations/guides/begin-guide'
import { withdrawGuide } from '@almanac/operations/guides/withdraw-guide'
import { now } from '@almanac/runtime/clock'
import { can } from '../procedure.ts'
import { measurePath } from '../public-paths.ts'

export const guides = {
  ofSite: can('record:call').guides.ofSite.handler(async ({ context: { scope }, input }) => {
    const at = now().toISOString()
    const path = (id: string) => measurePath(makePublicToken('measure', { companyId: scope.companyId, id }))
    return (await readGuides(scope, input.siteId)).map(({ withdrawn, ...one }) => ({
      ...one,
      path: withdrawn || one.linkUntil <= at ? null : path(one.id),
    }))
  }),
  begin: can('record:call').guides.begin.handler(({ context, input }) => beginGuide(context.scope, input)),
  withdraw: can('record:call').guides.withdraw.handler(({ context, input }) => withdrawGuide(context.scope, input)),
}
