import { now } from '@almanac/runtime/clock'
import { dayIn } from '@almanac/units/calendar/zone-clock'
import 'server-only'
import { readFirmFigures } from '@almanac/database/read/firm-figures'
import { readMovements, readStockItems } from '@almanac/database/read/stores'
import { addItem } from '@almanac/operations/stores/add-item'
import { addUsualItems } from '@almanac/operations/stores/add-usual-items'
import { archiveItem, changeItem } from '@almanac/operations/stores/change-item'
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
  addItem: change.addItem.handler(({ context, input }) => addItem(context.scope, input)),
  addUsualItems: change.addUsualItems.handler(({ context, input }) => addUsualItems(context.scope, input)),
  changeItem: change.changeItem.handler(({ context, input }) => changeItem(context.scope, input)),
  archiveItem: change.archiveItem.handler(({ context, input }) => archiveItem(context.scope, input)),
  items: read.items.handler(({ context, input }) => readStockItems(context.scope, input)),
  movements: read.movements.handler(({ context, input }) => readMovements(context.scope, input)),
  receive: change.receive.handler(({ context, input }) => receiveStock(context.scope, input)),
  count: change.count.handler(({ context, input }) => countStock(context.scope, input)),
}
