import 'server-only'
import { readToday } from '@almanac/database/read/today'
import { readVisit } from '@almanac/database/read/visit-page'
import { closeOutVisit } from '@almanac/operations/jobs/close-out-visit'
import { startVisit } from '@almanac/operations/jobs/start-visit'
import { can } from '../procedure.ts'

const own = can('read:own-work').visits
const close = can('close:visit').visits

export const visits = {
  today: own.today.handler(({ context, input }) => readToday(context.scope, input.day, context.who.company.timeZone)),
  get: own.get.handler(({ context, input }) => readVisit(context.scope, input.visitId)),
  start: close.start.handler(({ context, input }) => startVisit(context.scope, input)),
  closeOut: close.closeOut.handler(({ context, input }) => closeOutVisit(context.scope, input)),
}
