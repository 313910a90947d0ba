import { now } from '@almanac/runtime/clock'
import { dayIn } from '@almanac/units/calendar/zone-clock'
import 'server-only'
import { readDueBeds } from '@almanac/database/read/due-beds'
import { dueMonths } from '@almanac/operations/forecasts/past-misses'
import { readDesk } from '@almanac/operations/forecasts/read-desk'
import { can } from '../procedure.ts'

export const due = {
  desk: can('read:due').due.desk.handler(({ context }) => readDesk(context.scope, context.who.company.timeZone)),
  months: can('read:due').due.months.handler(({ context, input }) => dueMonths(context.scope, input, context.who.company.timeZone)),
  beds: can('read:due').due.beds.handler(({ context, input }) =>
    readDueBeds(context.scope, input, dayIn(context.who.company.timeZone, now())),
  ),
}
