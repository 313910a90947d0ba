'use client'
import type { Settings } from '@almanac/contract/firm'
import { Button } from '@almanac/ui/button'
import { DefinitionList } from '@almanac/ui/definition-list'
import { Problem } from '@almanac/ui/problem'
import { Section } from '@almanac/ui/section'
import { Skeleton } from '@almanac/ui/skeleton'
import { dayIn } from '@almanac/units/calendar/zone-clock'
import { formatDay } from '@almanac/units/format-day'
import { useQuery } from '@tanstack/react-query'
import { useState } from 'react'
import { readFailure } from '@/client/failure'
import { figureName, figureWords } from '@/client/figure-words'
import { useSession } from '@/client/providers'
import { DrivesPart } from './drives-part.tsx'
import { EditSettings } from './edit-settings.tsx'
import { HolidaysPart } from './holidays-part.tsx'
import { LogoPart } from './logo-part.tsx'
import { PoolPart } from './pool-part.tsx'
import { COSTS, DAYS, DETAILS, REMINDERS, type SettingName } from './settings-form.ts'
import { useChanges } from './use-figures.ts'

const PARTS = { costs: COSTS, days: DAYS, details: DETAILS, reminders: REMINDERS }

/** The company's details, its hours and lead times, and what its work costs. */
export function SettingsPart() {
  const { api, me } = useSession()
  const { data, error, refetch } = useQuery(api.firm.settings.queryOptions())
  const [editing, setEditing] = useState<keyof typeof PARTS | null>(null)
  if (error) return <Problem happened={readFailure(error).message} onRetry={() => void refetch()} />
  if (!data) return <Skeleton lines={6} label="Loading the settings" />
  const change = (part: keyof typeof PARTS, words: string) => (
    <Button onClick={() => setEditing(part)} aria-label={words}>
      Edit
    </Button>
  )
  // Whatever is on record is kept in these: they were chosen when the company was set up.
  const fixed = [
    { name: 'Units', value: me.company.unitSystem === 'us' ? 'US' : 'Metric', from: 'chosen at set-up' },
    { name: 'Currency', value: me.company.currency, from: 'chosen at set-up' },
    { name: 'Time zone', value: me.company.timeZone.replaceAll('_', ' '), from: 'chosen at set-up' },
  ]
  return (
    <>
      <Section title="Company details" actions={change('details', 'Edit: company details')}>
        <Values settings={data} names={DETAILS} />
        <DefinitionList facts={fixed} />
        <LogoPart settings={data} />
      </Section>
      <Section title="Hours, yard and crews" actions={change('days', 'Edit: hours, yard and crews')}>
        <Values settings={data} names={DAYS} />
      </Section>
      <HolidaysPart settings={data} />
      <Section title="Reminders" actions={change('reminders', 'Edit: reminders')}>
        <Values settings={data} names={REMINDERS} />
      </Section>
      <Section title="Prices and costs" actions={change('costs', 'Edit: prices and costs')}>
        <p className="mb-3 max-w-[75ch] text-soft">Used to work out the cheapest age to rebed, and whether a plan may use overtime.</p>
        <Values settings={data} names={COSTS} />
      </Section>
      <DrivesPart />
      <PoolPart settings={data} />
      {editing ? <EditSettings settings={data} names={PARTS[editing]} onClose={() => setEditing(null)} /> : null}
    </>
  )
}

function Values({ settings, names }: { settings: Settings; names: readonly SettingName[] }) {
  const { me } = useSession()
  const { timeZone } = me.company
  const display = me.company
  const changes = useChanges()
  return (
    <DefinitionList
      unknown="not set"
      facts={names.map((name) => {
        const last = changes.find((one) => one.field === name)
        return {
          key: name,
          name: figureName(name, display),
          value: settings[name] === null ? null : figureWords(name, settings[name], display),
          from: last
            ? `${last.who ?? 'someone no longer here'}, ${formatDay(dayIn(timeZone, last.at), display)}${last.note ? `: “${last.note}”` : ''}`
            : DETAILS.includes(name)
              ? 'as it was set up'
              : settings[name] === null
                ? 'there’s no default; set your own'
                : 'as it was set up; common practice, no source',
        }
      })}
    />
  )
}
