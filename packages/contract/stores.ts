import { movementReasons } from '@almanac/records/stock'
import { oc } from '@orpc/contract'
import * as z from 'zod'
import { command, Day, Entered, Id, Instant, page, pageOf, Version } from './shared.ts'

export const StockRow = z.object({
  id: Id,
  version: Version,
  name: z.string(),
  kind: z.string(),
  unit: z.string(),
  onHand: z.number(),
  priceMinor: z.number().int().nullable(),
  openDiscrepancies: z.number().int(),
})
export type StockRow = z.infer<typeof StockRow>

export const MovementRow = z.object({
  id: Id,
  at: Instant,
  itemName: z.string(),
  unit: z.string(),
  quantity: z.number(),
  reason: z.enum(movementReasons),
  visitId: Id.nullable(),
  siteLabel: z.string().nullable(),
})
export type MovementRow = z.infer<typeof MovementRow>

/** Why it is right, where it is unusual. */
const why = Entered.shape.why

export const ReceiveInput = command({ stockItemId: Id, quantity: z.number(), why })
export type ReceiveInput = z.infer<typeof ReceiveInput>
export const CountInput = command({ stockItemId: Id, version: Version, counted: z.number(), why })
export type CountInput = z.infer<typeof CountInput>

export const PickKitsInput = command({ crewDayId: Id })
export type PickKitsInput = z.infer<typeof PickKitsInput>
export const ChangeLeadInput = command({ stockItemId: Id, version: Version, leadDays: z.number().int().min(0).max(365) })
export type ChangeLeadInput = z.infer<typeof ChangeLeadInput>

/** One item against what will be taken of it. Quantities in the item's unit; days are null where nothing falls short. */
export const OrderLine = z.object({
  stockItemId: Id,
  version: Version,
  name: z.string(),
  unit: z.string(),
  onHand: z.number(),
  leadDays: z.number().int(),
  /** Reserved by booked rebeds. */
  reserved: z.number(),
  /** Left once booked rebeds have theirs; below 0 where it is not enough. */
  free: z.number(),
  shortForBookedOn: Day.nullable(),
  outOn: Day.nullable(),
  orderBy: Day.nullable(),
  order: z.number(),
})
export type OrderLine = z.infer<typeof OrderLine>

export const stores = {
  /** What to order and by when, the most pressing first. */
  orders: oc.route({ method: 'GET', path: '/stores/orders' }).output(z.object({ untilDay: Day, lines: z.array(OrderLine) })),
  /** What the kits of one day sheet take from the stores. */
  loadList: oc
    .route({ method: 'GET', path: '/stores/load-list' })
    .input(z.object({ crewDayId: Id }))
    .output(
      z.object({
        picked: z.boolean(),
        lines: z.array(z.object({ stockItemId: Id, name: z.string(), unit: z.string(), quantity: z.number(), onHand: z.number() })),
      }),
    ),
  pick: oc
    .route({ method: 'POST', path: '/stores/pick' })
    .input(PickKitsInput)
    .output(z.object({ lines: z.number().int() })),
  changeLead: oc
    .route({ method: 'POST', path: '/stores/change-lead' })
    .input(ChangeLeadInput)
    .output(z.object({ version: Version })),
  items: oc.route({ method: 'GET', path: '/stores/items' }).input(page({})).output(pageOf(StockRow)),
  movements: oc.route({ method: 'GET', path: '/stores/movements' }).input(page({})).output(pageOf(MovementRow)),
  receive: oc
    .route({ method: 'POST', path: '/stores/receive' })
    .input(ReceiveInput)
    .output(z.object({ stockItemId: Id, onHand: z.number() })),
  count: oc
    .route({ method: 'POST', path: '/stores/count' })
    .input(CountInput)
    .output(z.object({ stockItemId: Id, onHand: z.number(), difference: z.number() })),
}
