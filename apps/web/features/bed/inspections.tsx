import type { BedPage } from '@almanac/contract/beds'
import { useDisplay } from '@almanac/ui/display'
import { formatPressurePsi } from '@almanac/units/format'
import { formatDay } from '@almanac/units/format-day'
import { formatPercent } from '@almanac/units/format-number'
import { useWords } from '@almanac/words/use-words'
import { useSession } from '@/client/providers'

/** What was seen or measured of the bed, the latest first. */
export function Inspections({ bed }: { bed: BedPage }) {
  const display = useDisplay()
  const { me } = useSession()
  const [words, lines] = [useWords('bed'), useWords('history')]
  if (bed.inspections.length === 0) return <p className="text-soft">{words('noInspections')}</p>
  return (
    <ul className="border-t border-line">
      {bed.inspections.map((one) => (
        <li key={one.id} className="grid gap-x-6 border-b border-line py-2 sm:grid-cols-[7rem_1fr]">
          <span className="text-soft">{formatDay(one.day, display)}</span>
          <span>
            {[
              one.beadCondition && lines(`beads/${one.beadCondition}`),
              one.capacityShare !== null && words('capacityOfNew', { share: formatPercent(one.capacityShare, me.company) }),
              one.moistureShare !== null && words('beadMoisture', { share: formatPercent(one.moistureShare, me.company) }),
              one.pressureDropPsi !== null && lines('drop', { pressure: formatPressurePsi(one.pressureDropPsi, me.company) }),
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
