import type { AddItem, ChangeItem } from '@almanac/contract/stores'
import type { StockKind, StockUnit } from '@almanac/records/stock'
import { AppError } from '@almanac/runtime/errors'

type Sent = Pick<AddItem | ChangeItem, 'name' | 'bagFt3' | 'resinKind' | 'tubeOdIn' | 'priceMinor' | 'leadDays'>

/** A row of the stores as it is written. */
export type ItemOf = Sent & { kind: StockKind; unit: StockUnit; archivedAt: null }

/** What is kept of an item: bag and resin of a resin alone, the diameter of a tube alone; a kit finds them by these, so a resin without them is refused. */
export function itemFacts(kind: string, { name, bagFt3, resinKind, tubeOdIn, priceMinor, leadDays }: Sent): Sent {
  if (kind === 'resin' && (bagFt3 === null || resinKind === null))
    throw new AppError('invalid', 'A resin needs its kind and what one bag holds: kits choose it by these. Nothing was saved.', {
      field: bagFt3 === null ? 'bagFt3' : 'resinKind',
    })
  if (kind === 'tube' && tubeOdIn === null)
    throw new AppError('invalid', 'A distributor tube needs its outside diameter: a kit takes the one that fits. Nothing was saved.', {
      field: 'tubeOdIn',
    })
  const resin = kind === 'resin'
  return {
    name,
    bagFt3: resin ? bagFt3 : null,
    resinKind: resin ? resinKind : null,
    tubeOdIn: kind === 'tube' ? tubeOdIn : null,
    priceMinor,
    leadDays,
  }
}
