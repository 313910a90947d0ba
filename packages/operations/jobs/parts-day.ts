import type { Tx } from '@almanac/database/client'
import { readFreeStock } from '@almanac/database/read/free-stock'
import type { BedFacts } from '@almanac/records/bed-facts'
import type { FirmFigures } from '@almanac/softener/firm/firm-figures'
import { takeFromStores } from '@almanac/softener/kit/take-from-stores'
import { kitOf } from '@almanac/softener/rebed/kit-of-record'
import { formatAmount } from '@almanac/units/amount-words'
import { addDays } from '@almanac/units/calendar/calendar-day'
import type { AmountDisplay } from '@almanac/units/display'
import { formatNearDay } from '@almanac/units/format-day'
import { rebedFirm } from '../shared/rebed-firm.ts'

/** The first day a job's kit can be in the stores, and what it waits for; null where all of it is on the shelf. */
export type PartsDay = { day: string; because: string } | null

/** Answers for one job after another: what an earlier one takes is gone for the next. */
export type PartsDesk = { dayOf: (job: { kind: string; bed: BedFacts | null }) => PartsDay }

type Firm = { figures: FirmFigures; display: AmountDisplay }

/**
 * Opens the stores as they are: what is on the shelf and not spoken for. What is missing can be ordered today and comes after the item's own lead. Kits that
 * cannot be made up, and what the stores do not keep, hold nothing up. `exceptVisitId`: a visit whose own kit counts as free.
 */
export async function openPartsDesk(tx: Tx, companyId: string, today: string, firm: Firm, exceptVisitId?: string): Promise<PartsDesk> {
  return partsDesk(await readFreeStock(tx, companyId, exceptVisitId), today, firm)
}

/** As `openPartsDesk`, of stock that was read already. */
export function partsDesk(items: Awaited<ReturnType<typeof readFreeStock>>, today: string, firm: Firm): PartsDesk {
  const free = new Map(items.map((item) => [item.id, item.free]))
  return {
    dayOf: ({ kind, bed }) => {
      const kit = kind === 'rebed' && bed ? kitOf(bed, rebedFirm(firm.figures, firm.display)) : null
      if (!kit?.ok) return null
      const short = takeFromStores(kit.value, items).taken.flatMap(({ item, quantity }) => {
        const left = free.get(item.id) ?? 0
        free.set(item.id, left - quantity)
        return left + 1e-9 >= quantity ? [] : [{ item, missing: quantity - Math.max(0, left) }]
      })
      const last = short.sort((a, b) => b.item.leadDays - a.item.leadDays)[0]
      if (!last) return null
      const day = addDays(today, last.item.leadDays)
      return {
        day,
        because: `${formatAmount(last.missing, last.item.unit, firm.display)} of ${last.item.name} missing, there on ${formatNearDay(day, firm.display)} if ordered today`,
      }
    },
  }
}
