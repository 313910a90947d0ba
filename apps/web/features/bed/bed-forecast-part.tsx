'use client'
import type { BedPage, StoredForecast } from '@almanac/contract/beds'
import { useDisplay } from '@almanac/ui/display'
import { Section } from '@almanac/ui/section'
import { SurvivalCurve } from '@almanac/ui/survival-curve'
import { formatDay } from '@almanac/units/format-day'
import { type NumberDisplay, showWhole } from '@almanac/units/format-number'
import { useQuery } from '@tanstack/react-query'
import { useSession } from '@/client/providers'
import { useToday } from '@/client/use-today'
import { ForecastWhy } from './forecast-why.tsx'
import { Sharpen } from './sharpen.tsx'

type Props = { bed: BedPage; mayChange: boolean; onEdit: () => void; onInspect: () => void }

/** What drives a bed's due date, what would sharpen it, and the curve behind it. */
export function BedForecastPart({ bed, mayChange, onEdit, onInspect }: Props) {
  const display = useDisplay()
  const { api } = useSession()
  const today = useToday()
  const { forecast } = bed
  const why = useQuery(api.beds.explain.queryOptions({ input: { bedId: bed.id }, enabled: bed.site !== null }))
  if (!bed.site || !forecast) return null
  const { due10Day, due50Day, due90Day } = forecast
  const explained = why.data?.ok ? why.data : null
  return (
    <Section title="Why this date">
      <Drivers forecast={forecast} />
      <Assumed forecast={forecast} />
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
        Calculated {formatDay(forecast.asOfDay, display)}
        {explained ? <> from {fitPhrase(explained.value.fit, display)}</> : null}. <ForecastWhy forecast={forecast} explained={explained} />
      </p>
    </Section>
  )
}

/** What nobody has told, and what the forecast takes in its place: said before anybody asks why. */
function Assumed({ forecast }: { forecast: StoredForecast }) {
  if (forecast.assumptions.length === 0) return null
  return (
    <>
      <h3 className="mt-5 mb-1 font-semibold">What we had to assume</h3>
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

const fitPhrase = (fit: { failures: number; fellBackBecause: string | null } | null, display: NumberDisplay) =>
  fit && !fit.fellBackBecause ? `your own records (${showWhole(fit.failures, display)} beds that failed)` : 'industry rules of thumb'

function Drivers({ forecast }: { forecast: StoredForecast }) {
  if (forecast.drivers.length === 0) return forecast.refusal ? null : <p className="mt-4">Age decides; its water matters little.</p>
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
