'use client'
import type { BedPage, StoredForecast } from '@almanac/contract/beds'
import { useDisplay } from '@almanac/ui/display'
import { Section } from '@almanac/ui/section'
import { SurvivalCurve } from '@almanac/ui/survival-curve'
import { formatDay } from '@almanac/units/format-day'
import { showWhole } from '@almanac/units/format-number'
import { useWords } from '@almanac/words/use-words'
import { useQuery } from '@tanstack/react-query'
import { useSession } from '@/client/providers'
import { useToday } from '@/client/use-today'
import { ForecastWhy } from './forecast-why.tsx'
import { Sharpen } from './sharpen.tsx'

type Props = { bed: BedPage; mayChange: boolean; onEdit: () => void; onInspect: () => void }

/** What drives a bed's due date, what would sharpen it, and the curve behind it. */
export function BedForecastPart({ bed, mayChange, onEdit, onInspect }: Props) {
  const display = useDisplay()
  const words = useWords('bed')
  const { api } = useSession()
  const today = useToday()
  const { forecast } = bed
  const why = useQuery(api.beds.explain.queryOptions({ input: { bedId: bed.id }, enabled: bed.site !== null }))
  if (!bed.site || !forecast) return null
  const { due10Day, due50Day, due90Day } = forecast
  const explained = why.data?.ok ? why.data : null
  const day = formatDay(forecast.asOfDay, display)
  const fit = explained?.value.fit
  const calculated = !explained
    ? words('calculated', { day })
    : fit && !fit.fellBackBecause
      ? words('calculatedOwn', { day, failures: showWhole(fit.failures, display) })
      : words('calculatedTrade', { day })
  return (
    <Section title={words('whyThisDate')}>
      <Drivers forecast={forecast} />
      <Assumed forecast={forecast} />
      <Sharpen
        forecast={forecast}
        explained={explained}
        act={mayChange ? { onEdit, onInspect, bedId: bed.id, siteId: bed.site.id } : null}
      />
      {explained ? (
        <SurvivalCurve
          title={words('chanceWorks')}
          today={today}
          points={explained.value.curve.map(({ day, low, mid, high }) => ({ day, alive: mid, low, high }))}
          due={{ early: due10Day ?? undefined, middle: due50Day ?? undefined, late: due90Day ?? undefined }}
        />
      ) : null}
      <p className="text-small text-soft">
        {calculated} <ForecastWhy forecast={forecast} explained={explained} />
      </p>
    </Section>
  )
}

/** What nobody has told, and what the forecast takes in its place: said before anybody asks why. */
function Assumed({ forecast }: { forecast: StoredForecast }) {
  const words = useWords('bed')
  if (forecast.assumptions.length === 0) return null
  return (
    <>
      <h3 className="mt-5 mb-1 font-semibold">{words('assumed')}</h3>
      <ul className="border-t border-line">
        {forecast.assumptions.map((one) => (
          <li key={one} className="border-b border-line py-1.5">
            {one}
          </li>
        ))}
      </ul>
    </>
  )
}

function Drivers({ forecast }: { forecast: StoredForecast }) {
  const words = useWords('bed')
  if (forecast.drivers.length === 0) return forecast.refusal ? null : <p className="mt-4">{words('ageDecides')}</p>
  return (
    <>
      <h3 className="mt-5 mb-1 font-semibold">{words('drives')}</h3>
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
