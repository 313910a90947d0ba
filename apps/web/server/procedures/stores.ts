import 'server-only'
import { readMovements, readStockItems } from '@almanac/database/read/stores'
import { countStock } from '@almanac/operations/stores/count-stock'
import { receiveStock } from '@almanac/operations/stores/receive-stock'
import { can } from '../procedure.ts'

const read = can('read:stores').stores
const change = can('change:stores').stores

export const stores = {
  items: read.items.handler(({ context, input }) => readStockItems(context.scope, input)),
  movements: read.movements.handler(({ context, input }) => readMovements(context.scope, input)),
  receive: change.receive.handler(({ context, input }) => receiveStock(context.scope, input)),
  count: change.count.handler(({ context, input }) => countStock(context.scope, input)),
}
