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
import { useWords } from '@almanac/words/use-words'
import { ribbonAxis } from '@/client/bed-facts-words'
import { useChance } from '@/client/use-chance'
import { useToday } from '@/client/use-today'

/** When the bed comes due and its chances; what it wants where there is no forecast. */
export function BedDue({ bed, mayChange, onEdit }: { bed: BedPage; mayChange: boolean; onEdit: () => void }) {
  const today = useToday()
  const display = useDisplay()
  const words = useWords('bed')
  const { forecast } = bed
  if (!bed.site)
    return (
      <Section title={words('forecast')}>
        <p className="text-soft">{words('noWater')}</p>
      </Section>
    )
  if (!forecast)
    return (
      <Section title={words('forecast')}>
        <p className="text-soft">{words('beingMade')}</p>
        <Skeleton lines={3} label={words('waiting')} />
      </Section>
    )
  const { due10Day, due50Day, due90Day } = forecast
  const axis = ribbonAxis(today)
  const ofTen = (early: string, middle: string, late: string | null) => {
    const months = { early: formatMonth(early, display), middle: formatMonth(middle, display) }
    return late ? words('ofTen', { ...months, late: formatMonth(late, display) }) : words('ofTenOpen', months)
  }
  return (
    <Section title={due50Day ? words('dueAbout', { month: formatMonth(due50Day, display) }) : words('noForecast')}>
      {forecast.refusal ? (
        <Notice kind="mind" action={mayChange ? <Button onClick={onEdit}>{words('editFacts')}</Button> : undefined}>
          {forecast.refusal}
        </Notice>
      ) : null}
      {bed.heardHard ? <HeardHard heard={bed.heardHard} /> : null}
      {due10Day && due50Day ? (
        <>
          <DueAxisHead axis={axis} />
          <DueRibbon early={due10Day} middle={due50Day} late={due90Day} axis={axis} />
          <p className="mt-1">{ofTen(due10Day, due50Day, due90Day)}</p>
          <Chances forecast={forecast} />
        </>
      ) : null}
    </Section>
  )
}

/** The customer says that it has failed: the chances are those of a bed of which nobody does. */
function HeardHard({ heard }: { heard: NonNullable<BedPage['heardHard']> }) {
  const display = useDisplay()
  const words = useWords('bed')
  const since = formatDays(heard.earliest, heard.latest, display)
  return <Notice kind="mind">{words('heardHard', { since, at: formatInstant(heard.calledAt, display) })}</Notice>
}

function Chances({ forecast }: { forecast: StoredForecast }) {
  const words = useWords('bed')
  const chance = useChance()
  const { chanceAlreadyFailed: already, chance3Months, chance12Months, chance24Months } = forecast
  const figures = [
    { months: '3', value: chance3Months },
    { months: '12', value: chance12Months },
    { months: '24', value: chance24Months },
  ]
  return (
    <>
      <dl className="mt-4 flex gap-x-8 max-sm:justify-between max-sm:gap-x-2">
        {figures.map(({ months, value }) =>
          value === null ? null : (
            <div key={months} className="flex flex-col-reverse">
              <dt className="text-small text-soft">{words('failsIn', { months })}</dt>
              <dd className="text-h2 font-semibold">{chance(value)}</dd>
            </div>
          ),
        )}
      </dl>
      {already !== null && already >= 0.05 ? <p className="mt-2">{words('already', { chance: chance(already) })}</p> : null}
    </>
  )
}
