import type { BedPage } from '@almanac/contract/beds'
import { beadConditionLines } from '@almanac/records/bead-condition'
import { formatPressurePsi } from '@almanac/units/format'
import { formatPercent } from '@almanac/units/format-number'
import { dayWords } from '@/client/clock-words'
import { useSession } from '@/client/providers'

/** What was seen or measured of the bed, the latest first. */
export function Inspections({ bed }: { bed: BedPage }) {
  const { me } = useSession()
  if (bed.inspections.length === 0)
    return <p className="text-soft">Nothing was seen or measured of this bed yet. A bead in the hand says more than its age.</p>
  return (
    <ul className="border-t border-line">
      {bed.inspections.map((one) => (
        <li key={one.id} className="grid gap-x-6 border-b border-line py-2 sm:grid-cols-[7rem_1fr]">
          <span className="text-soft">{dayWords(one.day)}</span>
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
