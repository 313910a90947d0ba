import type { Desk } from '@almanac/contract/desk'
import { ON_THE_ROAD } from '@almanac/service-rules/crews/crew-hours'
import { useDisplay } from '@almanac/ui/display'
import { Why } from '@almanac/ui/why'
import { formatPercent, showWhole, withUnit } from '@almanac/units/format-number'

/** Where the crews' hours and the hours needed come from. */
export function CrewWhy({ desk }: { desk: Desk }) {
  const display = useDisplay()
  const have = desk.months.reduce((sum, one) => sum + one.crewHours, 0)
  const byShifts = desk.crewsFrom === 'shifts'
  return (
    <Why
      explanation={{
        title: 'Crew hours against the work ahead',
        summary: byShifts
          ? 'These are the hours that your people have left for rebeds, two at a time, after driving, days off and other work.'
          : 'Nobody is on your day sheets yet, so the hours come from the number of rebeds a month in Company settings.',
        inputs: [
          {
            name: 'Hours left, 12 months',
            value: withUnit(have, 0, 'h', display),
            from: byShifts ? 'shifts, breaks and days off' : 'Company settings',
          },
          { name: 'A usual rebed', value: withUnit(desk.hoursEach, 1, 'h', display), from: 'your own visits, by tank size' },
          ...(byShifts
            ? [
                { name: 'Driving and loading', value: formatPercent(ON_THE_ROAD, display), from: 'common practice, no source' },
                { name: 'Other work', value: `${showWhole(desk.otherHours, display)} h a month`, from: 'your last 12 months of visits' },
              ]
            : []),
        ],
        formula: byShifts
          ? 'Hours of all people on day sheets, less breaks and days off, less driving and loading, less other work (what is booked, at least what is usual), halved: a rebed takes two. Needed: rebeds of the month × hours of a usual rebed.'
          : 'Rebeds a month × hours of a usual rebed. Needed: rebeds of the month × hours of a usual rebed.',
        assumptions: [
          'Beds that have failed unseen are spread evenly over 12 months.',
          ...(byShifts ? ['Somebody without a shift of their own works the company’s hours from Monday to Friday.'] : []),
        ],
      }}
    >
      Where the hours come from
    </Why>
  )
}
