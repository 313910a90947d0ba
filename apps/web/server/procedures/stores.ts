import { now } from '@almanac/runtime/clock'
import { dayIn } from '@almanac/units/calendar/zone-clock'
import 'server-only'
import { readFirmFigures } from '@almanac/database/read/firm-figures'
import { readMovements, readStockItems } from '@almanac/database/read/stores'
import { changeLead } from '@almanac/operations/stores/change-lead'
import { countStock } from '@almanac/operations/stores/count-stock'
import { loadList } from '@almanac/operations/stores/load-list'
import { orderList } from '@almanac/operations/stores/order-list'
import { pickKits } from '@almanac/operations/stores/pick-kits'
import { receiveStock } from '@almanac/operations/stores/receive-stock'
import { mergeFigures } from '@almanac/softener/firm/merge-figures'
import { can } from '../procedure.ts'

const read = can('read:stores').stores
const change = can('change:stores').stores

export const stores = {
  orders: read.orders.handler(async ({ context: { who, scope } }) => {
    const { timeZone } = who.company
    const display = who.company
    const { figures } = mergeFigures((await readFirmFigures(scope)).filter((row) => row.inUse))
    return orderList(scope, { today: dayIn(timeZone, now()), display, figures })
  }),
  loadList: read.loadList.handler(({ context, input }) => loadList(context.scope, input.crewDayId)),
  pick: read.pick.handler(({ context, input }) => pickKits(context.scope, input)),
  changeLead: change.changeLead.handler(({ context, input }) => changeLead(context.scope, input)),
  items: read.items.handler(({ context, input }) => readStockItems(context.scope, input)),
  movements: read.movements.handler(({ context, input }) => readMovements(context.scope, input)),
  receive: change.receive.handler(({ context, input }) => receiveStock(context.scope, input)),
  count: change.count.handler(({ context, input }) => countStock(context.scope, input)),
}
