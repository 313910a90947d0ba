import { now } from '@almanac/runtime/clock'
import { dayIn } from '@almanac/units/calendar/zone-clock'
import 'server-only'
import { readSiteWater } from '@almanac/database/read/site-water'
import { readSupplies, readSupply } from '@almanac/database/read/water-supplies'
import { addPeriod } from '@almanac/operations/water/add-period'
import { addSupply } from '@almanac/operations/water/add-supply'
import { recordTest } from '@almanac/operations/water/record-test'
import { withdrawPeriod } from '@almanac/operations/water/withdraw-period'
import { withdrawTest } from '@almanac/operations/water/withdraw-test'
import { can } from '../procedure.ts'

const read = can('read:water').water
const change = can('change:water').water

export const water = {
  supplies: read.supplies.handler(({ context, input }) => readSupplies(context.scope, input, dayIn(context.who.company.timeZone, now()))),
  supply: read.supply.handler(({ context, input }) =>
    readSupply(context.scope, input.waterSupplyId, dayIn(context.who.company.timeZone, now())),
  ),
  addSupply: change.addSupply.handler(({ context, input }) => addSupply(context.scope, input)),
  addPeriod: change.addPeriod.handler(({ context, input }) => addPeriod(context.scope, input)),
  withdrawPeriod: change.withdrawPeriod.handler(({ context, input }) => withdrawPeriod(context.scope, input)),
  site: read.site.handler(({ context, input }) => readSiteWater(context.scope, input.siteId)),
  recordTest: change.recordTest.handler(({ context, input }) => recordTest(context.scope, input)),
  withdrawTest: change.withdrawTest.handler(({ context, input }) => withdrawTest(context.scope, input)),
}
