import type { OrderLine } from '@almanac/contract/stores'
import type { Scope } from '@almanac/database/in-company'
import { readStoreDemand, type StoreDemand } from '@almanac/database/read/store-demand'
import { type Demand, planOrder } from '@almanac/dispatch/stores/plan-order'
import { workAhead } from '@almanac/forecast/fleet/work-ahead'
import type { FirmFigures } from '@almanac/softener/firm/firm-figures'
import { takeFromStores } from '@almanac/softener/kit/take-from-stores'
import { kitOf } from '@almanac/softener/rebed/kit-of-record'
import { addDays, daysBetween } from '@almanac/units/calendar/calendar-day'
import type { AmountDisplay } from '@almanac/units/display'
import { rebedFirm } from '../shared/rebed-firm.ts'

const HORIZON_DAYS = 120

type Firm = { today: string; display: AmountDisplay; figures: FirmFigures }

/** What a rebed takes of each item on average: over the beds most likely to fail within a year, each by its chance. */
export function usualTake({ beds, items }: Pick<StoreDemand, 'beds' | 'items'>, firm: Omit<Firm, 'today'>): Map<string, number> {
  const sums = new Map<string, number>()
  let weights = 0
  for (const { weight, bed } of beds) {
    const kit = kitOf(bed, rebedFirm(firm.figures, firm.display))
    if (!kit.ok) continue
    weights += weight
    for (const { item, quantity } of takeFromStores(kit.value, items).taken) sums.set(item.id, (sums.get(item.id) ?? 0) + weight * quantity)
  }
  return new Map([...sums].map(([id, sum]) => [id, sum / weights]))
}

/** Rebeds of the work ahead month by month, those that have failed unseen among them, beyond those booked already, each month's in its middle or today. */
function expectedRebeds({ months, unseen, bookedRebedDays }: StoreDemand, today: string): { day: string; rebeds: number }[] {
  return workAhead(months, unseen).flatMap(({ month, mean: rebeds }) => {
    if (!month) return []
    const booked = bookedRebedDays.filter((day) => day?.slice(0, 7) === month.slice(0, 7)).length
    const middle = addDays(month, 14)
    const left = rebeds - booked
    return left > 0 ? [{ day: middle < today ? today : middle, rebeds: left }] : []
  })
}

/** What to order and by when: the shelf run down against booked kits and what the forecast expects. Items that last are listed too, after the others. */
export async function orderList(scope: Pick<Scope, 'companyId'>, firm: Firm): Promise<{ untilDay: string; lines: OrderLine[] }> {
  const { today } = firm
  const demand = await readStoreDemand(scope, today)
  const take = usualTake(demand, firm)
  const expected = expectedRebeds(demand, today)
  const dayNumber = (day: string | null) => (day === null ? 0 : daysBetween(today, day))
  const dayOfNumber = (day: number | null) => (day === null ? null : addDays(today, day))
  const lines = demand.items.map((item): OrderLine => {
    const booked = demand.reserved.filter((one) => one.stockItemId === item.id)
    const each = take.get(item.id) ?? 0
    const demands: Demand[] = [
      // What is past and not closed out yet is still to come off the shelf.
      ...booked.map((one) => ({ day: Math.max(0, dayNumber(one.day)), quantity: one.quantity, sure: true })),
      ...expected.map((one) => ({ day: dayNumber(one.day), quantity: one.rebeds * each, sure: false })),
    ]
    const plan = planOrder(item, demands, HORIZON_DAYS)
    return {
      ...{ stockItemId: item.id, version: item.version, name: item.name, unit: item.unit, onHand: item.onHand, leadDays: item.leadDays },
      reserved: booked.reduce((sum, one) => sum + one.quantity, 0),
      free: plan.free,
      shortForBookedOn: dayOfNumber(plan.shortForBookedOn),
      outOn: dayOfNumber(plan.outOn),
      orderBy: dayOfNumber(plan.orderBy),
      // Nobody orders a third of a bag.
      order: Math.ceil(plan.missing - 1e-6),
    }
  })
  const key = (line: OrderLine) => `${line.orderBy ?? '9999'} ${line.name}`
  return { untilDay: addDays(today, HORIZON_DAYS), lines: lines.sort((a, b) => (key(a) < key(b) ? -1 : 1)) }
}
