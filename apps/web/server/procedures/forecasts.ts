import 'server-only'
import { readRebedPlan } from '@almanac/database/read/rebed-plan'
import { askBacktest } from '@almanac/operations/forecasts/ask-backtest'
import { trackRecord } from '@almanac/operations/forecasts/past-misses'
import { whenToAct } from '@almanac/operations/forecasts/when-to-act'
import { can } from '../procedure.ts'

const judge = can('judge:forecast').forecasts

export const forecasts = {
  trackRecord: judge.trackRecord.handler(({ context }) => trackRecord(context.scope)),
  checkAgain: judge.checkAgain.handler(({ context, input }) => askBacktest(context.scope, input)),
  policy: judge.policy.handler(({ context, input }) => whenToAct(context.scope, input)),
  plan: can('read:due').forecasts.plan.handler(({ context }) => readRebedPlan(context.scope)),
}
