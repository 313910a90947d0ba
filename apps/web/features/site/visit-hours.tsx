'use client'
import type { SitePage } from '@almanac/contract/sites'
import { Checkbox } from '@almanac/ui/checkbox'
import { useDisplay } from '@almanac/ui/display'
import { TimeInput } from '@almanac/ui/time-input'
import { formatWeekday } from '@almanac/units/format-day'
import { WEEKDAYS } from '@/client/crew-words'

type Hours = SitePage['visitHours']

/** When a kitchen or a boiler room takes visits; nothing ticked and no time is any time. */
export function VisitHoursFields({ hours, onChange }: { hours: Hours; onChange: (hours: Hours) => void }) {
  const display = useDisplay()
  const tick = (weekday: number, on: boolean) =>
    onChange({ ...hours, weekdays: on ? [...hours.weekdays, weekday].sort() : hours.weekdays.filter((one) => one !== weekday) })
  return (
    <fieldset className="flex flex-col gap-2">
      <legend className="font-semibold">Visiting hours</legend>
      <p className="text-small text-soft">
        Visits must start and end in these times. No day checked means any day; no time means any hour.
      </p>
      <div className="flex flex-wrap gap-x-5">
        {WEEKDAYS.map((weekday) => (
          <Checkbox
            key={weekday}
            label={formatWeekday(weekday, display)}
            checked={hours.weekdays.includes(weekday)}
            onChange={(event) => tick(weekday, event.target.checked)}
          />
        ))}
      </div>
      <div className="flex flex-wrap gap-5">
        <TimeInput label="From" value={hours.from ?? ''} onChange={(event) => onChange({ ...hours, from: event.target.value || null })} />
        <TimeInput
          label="Until"
          value={hours.until ?? ''}
          onChange={(event) => onChange({ ...hours, until: event.target.value || null })}
        />
      </div>
    </fieldset>
  )
}
