import { readDay } from '@almanac/service-rules/import/read-day'
import { readTank } from '@almanac/service-rules/import/read-tank'
import { useDisplay } from '@almanac/ui/display'
import { formatDays } from '@almanac/units/format-day'
import { showWhole } from '@almanac/units/format-number'

type Days = { text: string; today: string; dayOrder: 'month-first' | 'day-first' }

/** How a written beginning is understood, under its field while it is being typed. */
export function BeganReading({ text, today, dayOrder }: Days) {
  const display = useDisplay()
  if (text.trim() === '') return null
  const reading = readDay(text, { today, dayOrder, display })
  if (!reading.ok) return <ReadAs>{reading.reason}</ReadAs>
  const { earliestDay, latestDay } = reading.value
  return <ReadAs>Read as {formatDays(earliestDay, latestDay, display)}.</ReadAs>
}

/** How a written tank is understood. */
export function TankReading({ text }: { text: string }) {
  const display = useDisplay()
  if (text.trim() === '') return null
  const reading = readTank(text)
  if (!reading.ok) return <ReadAs>{reading.reason}</ReadAs>
  const { diameterIn, heightIn, nominalGrains, resinVolumeFt3, tankCount } = reading.value
  const parts = [
    diameterIn && heightIn ? `${diameterIn} in across, ${heightIn} in high` : null,
    nominalGrains ? `${showWhole(nominalGrains, display)} grain` : null,
    resinVolumeFt3 ? `${Math.round(resinVolumeFt3 * 100) / 100} ft³ of resin` : null,
    tankCount > 1 ? `${tankCount} tanks` : null,
  ]
  return <ReadAs>Read as {parts.filter(Boolean).join(', ')}.</ReadAs>
}

function ReadAs({ children }: { children: React.ReactNode }) {
  return <output className="-mt-3 block text-small text-soft">{children}</output>
}
