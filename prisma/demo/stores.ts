import { newId } from '@almanac/runtime/ids'
import type { Prisma } from '../../packages/database/generated/client.ts'

const ITEMS: {
  name: string
  kind: string
  unit: string
  bagFt3?: number
  resinKind?: string
  tubeOdIn?: number
  onHand: number
  price: number
}[] = [
  { name: '8% resin, 1 ft³ bag', kind: 'resin', unit: 'bag', bagFt3: 1, resinKind: 'gel-8', onHand: 24, price: 9800 },
  { name: '8% resin, ½ ft³ bag', kind: 'resin', unit: 'bag', bagFt3: 0.5, resinKind: 'gel-8', onHand: 10, price: 5400 },
  { name: '8% resin, ¼ ft³ bag', kind: 'resin', unit: 'bag', bagFt3: 0.25, resinKind: 'gel-8', onHand: 3, price: 3000 },
  { name: '10% resin, 1 ft³ bag', kind: 'resin', unit: 'bag', bagFt3: 1, resinKind: 'gel-10', onHand: 12, price: 13600 },
  { name: '10% resin, ½ ft³ bag', kind: 'resin', unit: 'bag', bagFt3: 0.5, resinKind: 'gel-10', onHand: 4, price: 7400 },
  { name: 'Fine mesh resin, 1 ft³ bag', kind: 'resin', unit: 'bag', bagFt3: 1, resinKind: 'fine-mesh', onHand: 2, price: 14900 },
  { name: 'Quartz gravel', kind: 'gravel', unit: 'lb', onHand: 300, price: 60 },
  { name: 'Distributor tube 1.05 in with basket', kind: 'tube', unit: 'piece', tubeOdIn: 1.05, onHand: 9, price: 2200 },
  { name: 'Distributor tube 1.5 in with basket', kind: 'tube', unit: 'piece', tubeOdIn: 1.5, onHand: 2, price: 5200 },
  { name: 'Tube cap', kind: 'cap', unit: 'piece', onHand: 14, price: 150 },
  { name: 'Seal set', kind: 'seal', unit: 'set', onHand: 16, price: 1250 },
  { name: 'Silicone grease', kind: 'grease', unit: 'piece', onHand: 11, price: 690 },
  { name: 'Plain bleach, resin sanitiser', kind: 'sanitiser', unit: 'fl oz', onHand: 256, price: 10 },
  { name: 'Lidded pail for spent resin', kind: 'container', unit: 'piece', onHand: 30, price: 450 },
]

/** What stands in the stores, with the count that says so. */
export function stockRows(companyId: string, at: Date) {
  const stockItem: Prisma.StockItemCreateManyInput[] = []
  const movement: Prisma.MovementCreateManyInput[] = []
  for (const { price, ...item } of ITEMS) {
    const id = newId()
    stockItem.push({ companyId, id, priceMinor: price, ...item })
    movement.push({ companyId, id: newId(), stockItemId: id, quantity: item.onHand, reason: 'counted', at })
  }
  return { stockItem, movement }
}
