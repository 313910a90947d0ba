import { resinKinds } from '@almanac/records/resin-kind'
import { movementReasons, stockKinds, stockUnits } from '@almanac/records/stock'
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
  bagFt3: z.number().nullable(),
  resinKind: z.string().nullable(),
  tubeOdIn: z.number().nullable(),
  leadDays: z.number().int(),
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

const quantity = z.number().min(0).max(1_000_000)
/** What can change of an item. Price in minor units of the company's currency for one unit; a resin says its bag and kind, a tube its outside diameter. */
const itemFacts = {
  name: z.string().trim().min(1, 'give it a name').max(120),
  bagFt3: z.number().positive().max(100).nullable(),
  resinKind: z.enum(resinKinds).nullable(),
  tubeOdIn: z.number().min(0.25).max(6).nullable(),
  priceMinor: z.number().int().min(0).max(2_000_000_000).nullable(),
  leadDays: z.number().int().min(0).max(365),
}
export const AddItem = command({ ...itemFacts, kind: z.enum(stockKinds), unit: z.enum(stockUnits), onHand: quantity, why })
export type AddItem = z.infer<typeof AddItem>
export const ChangeItem = command({ ...itemFacts, stockItemId: Id, version: Version })
export type ChangeItem = z.infer<typeof ChangeItem>
export const ArchiveItem = command({ stockItemId: Id, version: Version })
export type ArchiveItem = z.infer<typeof ArchiveItem>
export const AddUsualItems = command({})
export type AddUsualItems = z.infer<typeof AddUsualItems>
const ItemChanged = z.object({ stockItemId: Id, version: Version })

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
  addItem: oc.route({ method: 'POST', path: '/stores/add-item' }).input(AddItem).output(ItemChanged),
  changeItem: oc.route({ method: 'POST', path: '/stores/change-item' }).input(ChangeItem).output(ItemChanged),
  /** Out of every list, its movements kept; adding an item of its name brings it back. */
  archiveItem: oc.route({ method: 'POST', path: '/stores/archive-item' }).input(ArchiveItem).output(ItemChanged),
  /** What a rebed usually takes, none of it on hand yet: those that are missing. */
  addUsualItems: oc
    .route({ method: 'POST', path: '/stores/add-usual-items' })
    .input(AddUsualItems)
    .output(z.object({ added: z.number().int() })),
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
