'use client'
import type { CrewPerson } from '@almanac/contract/crews'
import { Checkbox } from '@almanac/ui/checkbox'
import { useDisplay } from '@almanac/ui/display'
import { TimeInput } from '@almanac/ui/time-input'
import { formatWeekday } from '@almanac/units/format-day'
import { WEEKDAYS } from '@/client/crew-words'

type Shifts = CrewPerson['shifts']
type Props = { shifts: Shifts; usual: { from: string; until: string }; onChange: (shifts: Shifts) => void }

/** Which weekdays a person works, and when. */
export function ShiftFields({ shifts, usual, onChange }: Props) {
  const display = useDisplay()
  const set = (weekday: number, part: Partial<Shifts[number]> | null) => {
    const others = shifts.filter((one) => one.weekday !== weekday)
    const now = shifts.find((one) => one.weekday === weekday) ?? { weekday, ...usual }
    onChange((part ? [...others, { ...now, ...part }] : others).sort((a, b) => a.weekday - b.weekday))
  }
  return (
    <ul className="flex flex-col gap-1">
      {WEEKDAYS.map((weekday) => {
        const name = formatWeekday(weekday, display)
        const shift = shifts.find((one) => one.weekday === weekday)
        return (
          <li key={weekday} className="grid min-h-control grid-cols-[8rem_1fr] items-center">
            <Checkbox label={name} checked={shift !== undefined} onChange={(event) => set(weekday, event.target.checked ? {} : null)} />
            {shift ? (
              <span className="flex gap-2">
                <TimeInput
                  hideLabel
                  required
                  label={`${name} from`}
                  value={shift.from}
                  onChange={(event) => set(weekday, { from: event.target.value })}
                />
                <TimeInput
                  hideLabel
                  required
                  label={`${name} until`}
                  value={shift.until}
                  onChange={(event) => set(weekday, { until: event.target.value })}
                />
              </span>
            ) : (
              <span className="text-soft">free</span>
            )}
          </li>
        )
      })}
    </ul>
  )
}
