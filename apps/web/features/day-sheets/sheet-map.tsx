'use client'
import type { DaySheet } from '@almanac/contract/day-sheets'
import type { DrivePace } from '@almanac/records/drive-pace'
import { jobKindWords } from '@almanac/records/job-kind'
import { DrivesMap } from '@almanac/ui/drives-map'
import { formatMiles } from '@almanac/units/distance'
import { formatClock, formatDuration } from '@almanac/units/format-clock'
import { paceWords } from '@/client/pace-words'
import { useSession } from '@/client/providers'

type Yard = { latitude: number; longitude: number } | null

/** The drives of a sheet: their sum in words, and where they go on a map that needs no network. */
export function SheetMap({ sheet, yard, pace }: { sheet: DaySheet; yard: Yard; pace: DrivePace | null }) {
  const { me } = useSession()
  const display = me.company
  if (sheet.visits.length === 0) return null
  const known = sheet.drives.filter((drive) => drive.minutes !== null)
  const minutes = known.reduce((sum, drive) => sum + (drive.minutes ?? 0), 0)
  const miles = known.reduce((sum, drive) => sum + (drive.miles ?? 0), 0)
  const missing = sheet.drives.length - known.length
  const how = sheet.drives.some((drive) => drive.basis === 'server')
    ? 'From the routing server.'
    : `Estimated from coordinates, ${pace ? `at your own pace: ${paceWords(pace, display)}` : 'at usual speeds'}.`
  return (
    <details data-paper className="break-inside-avoid border-t border-line px-3 py-2 sm:px-5">
      <summary className="min-h-6 cursor-pointer">
        {known.length === 0
          ? 'Drives unknown'
          : `Drives: ${formatDuration(minutes, display)}, ${formatMiles(miles, display)}${missing > 0 ? `, ${missing} unknown` : ''}`}
        , map
      </summary>
      <DrivesMap
        title={`Drives of ${sheet.name}`}
        yard={yard}
        display={display}
        unknown={sheet.visits.filter((visit) => !visit.place).map((visit) => visit.siteLabel)}
        stops={sheet.visits.flatMap((visit) =>
          visit.place
            ? [
                {
                  key: visit.id,
                  label: visit.siteLabel,
                  detail: `${formatClock(visit.startsAt, display)}, ${jobKindWords[visit.kind]}`,
                  place: visit.place,
                },
              ]
            : [],
        )}
      />
      <p className="text-small text-soft">
        {yard ? how : `${how} Where crews start isn’t set yet. The owner can set it under Company settings.`}
      </p>
    </details>
  )
}
