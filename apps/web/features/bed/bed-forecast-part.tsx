'use client'
import type { BedPage, StoredForecast } from '@almanac/contract/beds'
import { Button } from '@almanac/ui/button'
import { useDisplay } from '@almanac/ui/display'
import { DueAxisHead, DueRibbon } from '@almanac/ui/due-ribbon'
import { Notice } from '@almanac/ui/notice'
import { Section } from '@almanac/ui/section'
import { Skeleton } from '@almanac/ui/skeleton'
import { SurvivalCurve } from '@almanac/ui/survival-curve'
import { formatDay, formatMonth } from '@almanac/units/format-day'
import { formatChance, type NumberDisplay, showWhole } from '@almanac/units/format-number'
import { useQuery } from '@tanstack/react-query'
import { ribbonAxis } from '@/client/bed-facts-words'
import { useSession } from '@/client/providers'
import { useToday } from '@/client/use-today'
import { ForecastWhy } from './forecast-why.tsx'
import { Sharpen } from './sharpen.tsx'

type Props = { bed: BedPage; mayChange: boolean; onEdit: () => void; onInspect: () => void }

/** When the bed comes due, its chances, what drives it, and what would sharpen it. */
export function BedForecastPart({ bed, mayChange, onEdit, onInspect }: Props) {
  const display = useDisplay()
  const { api } = useSession()
  const today = useToday()
  const { forecast } = bed
  const why = useQuery(api.beds.explain.queryOptions({ input: { bedId: bed.id }, enabled: bed.site !== null }))
  if (!bed.site)
    return (
      <Section title="Forecast">
        <p className="text-soft">A tank in the workshop has no water, so its bed is not forecast.</p>
      </Section>
    )
  if (!forecast)
    return (
      <Section title="Forecast">
        <p className="text-soft">The forecast is being made; it appears here by itself.</p>
        <Skeleton lines={3} label="Waiting for the forecast" />
      </Section>
    )
  const { due10Day, due50Day, due90Day } = forecast
  const axis = ribbonAxis(today)
  const explained = why.data?.ok ? why.data : null
  return (
    <Section title={due50Day ? `Due about ${formatMonth(due50Day, display)}` : 'No forecast'}>
      {forecast.refusal ? (
        <Notice kind="mind" action={mayChange ? <Button onClick={onEdit}>Change facts</Button> : undefined}>
          {forecast.refusal}
        </Notice>
      ) : null}
      {due10Day && due50Day ? (
        <>
          <DueAxisHead axis={axis} />
          <DueRibbon early={due10Day} middle={due50Day} late={due90Day} axis={axis} />
          <p className="mt-1">
            Of ten such beds one fails by {formatMonth(due10Day, display)}, five by {formatMonth(due50Day, display)}
            {due90Day ? `, nine by ${formatMonth(due90Day, display)}` : ''}.
          </p>
          <Chances forecast={forecast} />
        </>
      ) : null}
      <Drivers forecast={forecast} />
      <Sharpen
        forecast={forecast}
        explained={explained}
        act={mayChange ? { onEdit, onInspect, bedId: bed.id, siteId: bed.site.id } : null}
      />
      {explained ? (
        <SurvivalCurve
          title="Chance that this bed still works"
          today={today}
          points={explained.value.curve.map(({ day, low, mid, high }) => ({ day, alive: mid, low, high }))}
          due={{ early: due10Day ?? undefined, middle: due50Day ?? undefined, late: due90Day ?? undefined }}
        />
      ) : null}
      <p className="text-small text-soft">
        Reckoned {formatDay(forecast.asOfDay, display)}
        {explained ? <> from {fitPhrase(explained.value.fit, display)}</> : null}. <ForecastWhy forecast={forecast} explained={explained} />
      </p>
    </Section>
  )
}

const fitPhrase = (fit: { failures: number; fellBackBecause: string | null } | null, display: NumberDisplay) =>
  fit && !fit.fellBackBecause ? `your own records (${showWhole(fit.failures, display)} beds that failed)` : 'the trade’s first guesses'

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
      <dl className="mt-4 flex flex-wrap gap-x-8 gap-y-2">
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
        <p className="mt-2">
          It may have failed unnoticed since it was last seen: {formatChance(already, display)}. The chances above hold if it works today.
        </p>
      ) : null}
    </>
  )
}

function Drivers({ forecast }: { forecast: StoredForecast }) {
  if (forecast.drivers.length === 0)
    return forecast.refusal ? null : <p className="mt-4">Age alone drives it: its water takes and gives no years worth naming.</p>
  return (
    <>
      <h3 className="mt-5 mb-1 font-semibold">What drives it</h3>
      <ul className="border-t border-line">
        {forecast.drivers.map((one) => (
          <li key={`${one.key}-${one.words}`} className="border-b border-line py-1.5">
            {one.words}
          </li>
        ))}
      </ul>
    </>
  )
}
