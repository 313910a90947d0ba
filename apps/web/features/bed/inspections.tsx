import type { BedPage } from '@almanac/contract/beds'
import { beadConditionLines } from '@almanac/records/bead-condition'
import { useDisplay } from '@almanac/ui/display'
import { formatPressurePsi } from '@almanac/units/format'
import { formatDay } from '@almanac/units/format-day'
import { formatPercent } from '@almanac/units/format-number'
import { useSession } from '@/client/providers'

/** What was seen or measured of the bed, the latest first. */
export function Inspections({ bed }: { bed: BedPage }) {
  const display = useDisplay()
  const { me } = useSession()
  if (bed.inspections.length === 0)
    return <p className="text-soft">No inspections yet. A look at the beads says more than the bed’s age.</p>
  return (
    <ul className="border-t border-line">
      {bed.inspections.map((one) => (
        <li key={one.id} className="grid gap-x-6 border-b border-line py-2 sm:grid-cols-[7rem_1fr]">
          <span className="text-soft">{formatDay(one.day, display)}</span>
          <span>
            {[
              one.beadCondition && beadConditionLines[one.beadCondition],
              one.capacityShare !== null && `capacity ${formatPercent(one.capacityShare, me.company)} of new`,
              one.moistureShare !== null && `bead moisture ${formatPercent(one.moistureShare, me.company)}`,
              one.pressureDropPsi !== null && `pressure drop ${formatPressurePsi(one.pressureDropPsi, me.company)}`,
            ]
              .filter(Boolean)
              .join(', ')}
            {one.notes ? <span className="block text-soft">{one.notes}</span> : null}
          </span>
        </li>
      ))}
    </ul>
  )
}
