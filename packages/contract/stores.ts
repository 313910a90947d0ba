import { oc } from '@orpc/contract'
import * as z from 'zod'
import { command, Id, Instant, page, pageOf, Version } from './shared.ts'

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
  reason: z.enum(['received', 'used', 'counted', 'returned']),
  visitId: Id.nullable(),
  siteLabel: z.string().nullable(),
})
export type MovementRow = z.infer<typeof MovementRow>

const quantity = z.number().min(0).max(1_000_000)

export const ReceiveInput = command({ stockItemId: Id, quantity: quantity.gt(0) })
export const CountInput = command({ stockItemId: Id, version: Version, counted: quantity })

export const stores = {
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
