import 'server-only'
import { addAgreement } from '@almanac/operations/agreements/add-agreement'
import { endAgreement } from '@almanac/operations/agreements/end-agreement'
import { agreementsOfSite } from '@almanac/operations/agreements/of-site'
import { proposeTurns } from '@almanac/operations/agreements/propose-turns'
import { readRounds } from '@almanac/operations/agreements/read-rounds'
import { renewAgreement } from '@almanac/operations/agreements/renew-agreement'
import { settleTurn } from '@almanac/operations/agreements/settle-turn'
import { crewCapacity } from '@almanac/operations/forecasts/crew-capacity'
import { proposeIn } from '@almanac/operations/jobs/propose-job'
import { can } from '../procedure.ts'

export const agreements = {
  ofSite: can('read:site').agreements.ofSite.handler(({ context, input }) => agreementsOfSite(context.scope, input.siteId)),
  rounds: can('propose:job').agreements.rounds.handler(({ context, input }) => readRounds(context.scope, input, crewCapacity)),
  add: can('change:site').agreements.add.handler(({ context, input }) => addAgreement(context.scope, input)),
  renew: can('change:site').agreements.renew.handler(({ context, input }) => renewAgreement(context.scope, input)),
  end: can('change:site').agreements.end.handler(({ context, input }) => endAgreement(context.scope, input)),
  settleTurn: can('propose:job').agreements.settleTurn.handler(({ context, input }) => settleTurn(context.scope, input)),
  propose: can('propose:job').agreements.propose.handler(({ context, input }) => proposeTurns(context.scope, input, proposeIn)),
}
