import 'server-only'
import { readGuides } from '@almanac/database/read/guides'
import { makePublicToken } from '@almanac/identity/public-token'
import { beginGuide } from '@almanac/operations/guides/begin-guide'
import { fixHold, releaseHold, sendSteps, visitInstead } from '@almanac/operations/guides/office-steps'
import { withdrawGuide } from '@almanac/operations/guides/withdraw-guide'
import { orderKit } from '@almanac/operations/jobs/order-kit'
import { proposeIn } from '@almanac/operations/jobs/propose-job'
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
  sendSteps: can('record:call').guides.sendSteps.handler(({ context, input }) => sendSteps(context.scope, input)),
  releaseHold: can('record:call').guides.releaseHold.handler(({ context, input }) => releaseHold(context.scope, input)),
  fixHold: can('record:call').guides.fixHold.handler(({ context, input }) => fixHold(context.scope, input)),
  visitInstead: can('record:call').guides.visitInstead.handler(({ context, input }) => visitInstead(context.scope, input, proposeIn)),
  orderKit: can('propose:job').guides.orderKit.handler(({ context, input }) => orderKit(context.scope, input)),
}
