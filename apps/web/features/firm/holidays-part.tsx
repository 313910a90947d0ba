'use client'
import type { Settings } from '@almanac/contract/firm'
import { Button } from '@almanac/ui/button'
import { Checkbox } from '@almanac/ui/checkbox'
import { useDisplay } from '@almanac/ui/display'
import { Problem } from '@almanac/ui/problem'
import { Section } from '@almanac/ui/section'
import { Select } from '@almanac/ui/select'
import { Skeleton } from '@almanac/ui/skeleton'
import { formatDay } from '@almanac/units/format-day'
import { keepPreviousData, useQuery } from '@tanstack/react-query'
import { useState } from 'react'
import { readFailure } from '@/client/failure'
import { figureName, figureWords } from '@/client/figure-words'
import { FormDialog } from '@/client/form-dialog'
import { useSession } from '@/client/providers'
import { useCommand } from '@/client/use-command'

/** Whose public holidays the company keeps, and on which of them it works all the same. */
export function HolidaysPart({ settings }: { settings: Settings }) {
  const display = useDisplay()
  const { api } = useSession()
  const [editing, setEditing] = useState(false)
  const { holidayArea, holidaysWorked } = settings
  const { data, error, refetch } = useQuery(api.firm.holidays.queryOptions({ input: { area: holidayArea ?? undefined } }))
  const kept = data?.holidays.filter((one) => !holidaysWorked.includes(one.name)) ?? []
  return (
    <Section
      title="Public holidays"
      actions={
        <Button onClick={() => setEditing(true)} aria-label="Edit: public holidays">
          Edit
        </Button>
      }
    >
      <p className="mb-2 max-w-[75ch] text-soft">
        Plans and best places leave these days out. You can still open a day sheet and book by hand.
      </p>
      {error ? <Problem happened={readFailure(error).message} onRetry={() => void refetch()} /> : null}
      {!holidayArea ? <p>None. Choose a country to keep its holidays.</p> : null}
      {holidayArea && data && kept.length === 0 ? <p>You work on all of them.</p> : null}
      <ul>
        {kept.map(({ day, name }) => (
          <li key={`${day} ${name}`}>
            {formatDay(day, display)}: {name}
          </li>
        ))}
      </ul>
      {editing ? <EditHolidays settings={settings} onClose={() => setEditing(false)} /> : null}
    </Section>
  )
}

function EditHolidays({ settings, onClose }: { settings: Settings; onClose: () => void }) {
  const { api, me } = useSession()
  const display = useDisplay()
  const [seen] = useState(settings)
  const [area, setArea] = useState(seen.holidayArea ?? '')
  const [worked, setWorked] = useState<readonly string[]>(seen.holidaysWorked)
  const { data, error } = useQuery(
    api.firm.holidays.queryOptions({ input: { area: area || undefined }, placeholderData: keepPreviousData }),
  )
  const change = useCommand(api.firm.changeSettings.mutationOptions(), { onDone: onClose })
  const send = (over: Settings) => change.send({ ...over, holidayArea: area || null, holidaysWorked: [...worked], note: null })
  const names = [...new Map((data?.holidays ?? []).map((one) => [one.name, one])).values()]
  return (
    <FormDialog
      title="Public holidays"
      onClose={onClose}
      onSubmit={() => send(seen)}
      onKeepMine={() => send(settings)}
      busy={change.isPending}
      error={change.error ?? error}
      names={{ holidayArea: figureName('holidayArea', me.company), holidaysWorked: figureName('holidaysWorked', me.company) }}
      show={(name, value) => figureWords(name, value, me.company)}
    >
      {data ? (
        <Select label="Country or region" none="none" value={area} onChange={(event) => setArea(event.target.value)} choices={data.areas} />
      ) : (
        <Skeleton lines={3} label="Loading countries" />
      )}
      {area ? (
        <fieldset>
          <legend className="mb-1 font-medium">Closed on</legend>
          {names.map(({ name, day }) => (
            <Checkbox
              key={name}
              label={`${name}, ${formatDay(day, display)}`}
              checked={!worked.includes(name)}
              onChange={(event) => setWorked(event.target.checked ? worked.filter((one) => one !== name) : [...worked, name])}
            />
          ))}
        </fieldset>
      ) : null}
    </FormDialog>
  )
}
