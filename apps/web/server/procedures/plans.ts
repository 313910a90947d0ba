import 'server-only'
import { readPlan } from '@almanac/database/read/plan-page'
import { acceptPlan } from '@almanac/operations/jobs/accept-plan'
import { openCrews } from '@almanac/operations/jobs/open-crews'
import { startPlan } from '@almanac/operations/jobs/start-plan'
import { stopPlan } from '@almanac/operations/jobs/stop-plan'
import { can } from '../procedure.ts'

const book = can('book:visit').plans

export const plans = {
  start: book.start.handler(({ context, input }) => startPlan(context.scope, input)),
  get: book.get.handler(({ context, input }) => readPlan(context.scope, input.planId)),
  stop: book.stop.handler(({ context, input }) => stopPlan(context.scope, input)),
  accept: book.accept.handler(({ context, input }) => acceptPlan(context.scope, input)),
  openCrews: book.openCrews.handler(({ context, input }) => openCrews(context.scope, input)),
}
