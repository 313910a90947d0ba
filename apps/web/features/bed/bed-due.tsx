'use client'
import type { BedPage, StoredForecast } from '@almanac/contract/beds'
import { Button } from '@almanac/ui/button'
import { useDisplay } from '@almanac/ui/display'
import { DueAxisHead, DueRibbon } from '@almanac/ui/due-ribbon'
import { Notice } from '@almanac/ui/notice'
import { Section } from '@almanac/ui/section'
import { Skeleton } from '@almanac/ui/skeleton'
import { formatInstant } from '@almanac/units/format-clock'
import { formatDays, formatMonth } from '@almanac/units/format-day'
import { formatChance } from '@almanac/units/format-number'
import { ribbonAxis } from '@/client/bed-facts-words'
import { useToday } from '@/client/use-today'

/** When the bed comes due and its chances; what it wants where there is no forecast. */
export function BedDue({ bed, mayChange, onEdit }: { bed: BedPage; mayChange: boolean; onEdit: () => void }) {
  const today = useToday()
  const display = useDisplay()
  const { forecast } = bed
  if (!bed.site)
    return (
      <Section title="Forecast">
        <p className="text-soft">A tank in the workshop has no water, so its bed is not forecast.</p>
      </Section>
    )
  if (!forecast)
    return (
      <Section title="Forecast">
        <p className="text-soft">The forecast is being made and appears here automatically.</p>
        <Skeleton lines={3} label="Waiting for the forecast" />
      </Section>
    )
  const { due10Day, due50Day, due90Day } = forecast
  const axis = ribbonAxis(today)
  return (
    <Section title={due50Day ? `Due about ${formatMonth(due50Day, display)}` : 'No forecast'}>
      {forecast.refusal ? (
        <Notice kind="mind" action={mayChange ? <Button onClick={onEdit}>Edit facts</Button> : undefined}>
          {forecast.refusal}
        </Notice>
      ) : null}
      {bed.heardHard ? <HeardHard heard={bed.heardHard} /> : null}
      {due10Day && due50Day ? (
        <>
          <DueAxisHead axis={axis} />
          <DueRibbon early={due10Day} middle={due50Day} late={due90Day} axis={axis} />
          <p className="mt-1">
            Of 10 beds like this one, 1 fails by {formatMonth(due10Day, display)}, 5 by {formatMonth(due50Day, display)}
            {due90Day ? `, 9 by ${formatMonth(due90Day, display)}` : ''}.
          </p>
          <Chances forecast={forecast} />
        </>
      ) : null}
    </Section>
  )
}

/** The customer says that it has failed: the chances are those of a bed of which nobody does. */
function HeardHard({ heard }: { heard: NonNullable<BedPage['heardHard']> }) {
  const display = useDisplay()
  return (
    <Notice kind="mind">
      Hard water since about {formatDays(heard.earliest, heard.latest, display)}, said on a call, {formatInstant(heard.calledAt, display)}.
      The chances below are those of a bed nobody complains about.
    </Notice>
  )
}

function Chances({ forecast }: { forecast: StoredForecast }) {
  const display = useDisplay()
  const { chanceAlreadyFailed: already, chance3Months, chance12Months, chance24Months } = forecast
  const figures = [
    { name: 'in 3 months', value: chance3Months },
    { name: 'in 12 months', value: chance12Months },
    { name: 'in 24 months', value: chance24Months },
  ]
  return (
    <>
      <dl className="mt-4 flex gap-x-8 max-sm:justify-between max-sm:gap-x-2">
        {figures.map(({ name, value }) =>
          value === null ? null : (
            <div key={name} className="flex flex-col-reverse">
              <dt className="text-small text-soft">fails {name}</dt>
              <dd className="text-h2 font-semibold">{formatChance(value, display)}</dd>
            </div>
          ),
        )}
      </dl>
      {already !== null && already >= 0.05 ? (
        <p className="mt-2">{formatChance(already, display)} chance it has failed already. The chances above count if it works today.</p>
      ) : null}
    </>
  )
}
