import 'server-only'
import { readCallBacks, readCallSite, readCalls } from '@almanac/database/read/calls'
import { memberNames } from '@almanac/identity/people'
import { recordCall } from '@almanac/operations/calls/record-call'
import { settleCallBack } from '@almanac/operations/calls/settle-call-back'
import { proposeIn } from '@almanac/operations/jobs/propose-job'
import { can } from '../procedure.ts'

/** Who took a call, by name. */
async function namesIn(companyId: string) {
  const names = await memberNames(companyId)
  return (personId: string) => names.get(personId) ?? null
}

export const calls = {
  list: can('record:call').calls.list.handler(async ({ context, input }) =>
    readCalls(context.scope, input, await namesIn(context.scope.companyId)),
  ),
  callBacks: can('record:call').calls.callBacks.handler(({ context }) => readCallBacks(context.scope)),
  ofSite: can('record:call').calls.ofSite.handler(async ({ context, input }) =>
    readCallSite(context.scope, input.siteId, await namesIn(context.scope.companyId)),
  ),
  record: can('record:call').calls.record.handler(({ context, input }) => recordCall(context.scope, input, proposeIn)),
  settle: can('record:call').calls.settle.handler(({ context, input }) => settleCallBack(context.scope, input)),
}
