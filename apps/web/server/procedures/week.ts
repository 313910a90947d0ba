import 'server-only'
import { weekOfTowns } from '@almanac/operations/jobs/week-of-towns'
import { can } from '../procedure.ts'

export const week = {
  towns: can('book:visit').week.towns.handler(({ context, input }) => weekOfTowns(context.scope, input)),
}
