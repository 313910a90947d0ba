'use client'
import { Button } from '@almanac/ui/button'
import { Checkbox } from '@almanac/ui/checkbox'
import { Dialog } from '@almanac/ui/dialog'
import { Select } from '@almanac/ui/select'
import { Skeleton } from '@almanac/ui/skeleton'
import { TextArea } from '@almanac/ui/text-area'
import { TextInput } from '@almanac/ui/text-input'
import { TimeInput } from '@almanac/ui/time-input'
import { useQuery } from '@tanstack/react-query'
import { type ReactNode, useState } from 'react'
import { useSession } from '@/client/providers'

/** What a person fills in for a sheet. */
export type SheetValues = { name: string; colleagueIds: string[]; vehicleId: string | null; from: string; until: string; notes: string }

export type SheetFormProps = {
  title: string
  sendLabel: string
  start: SheetValues
  day: string
  /** Who and what already stands on other sheets of the day: said beside their names. */
  taken: ReadonlyMap<string, string>
  busy: boolean
  /** What went wrong at the last try. */
  problem?: ReactNode
  withNotes?: boolean
  onClose: () => void
  onSend: (values: SheetValues) => void
}

/** Name, people, vehicle and hours of one crew's day. */
export function SheetForm({ title, sendLabel, start, day, taken, busy, problem, withNotes, onClose, onSend }: SheetFormProps) {
  const { api } = useSession()
  const choices = useQuery(api.daySheets.crewChoices.queryOptions({ input: { day } }))
  const [values, setValues] = useState(start)
  const set = (more: Partial<SheetValues>) => setValues((all) => ({ ...all, ...more }))
  const people = choices.data?.colleagues ?? []
  const first = (id: string) => people.find((one) => one.id === id)?.name.split(' ')[0] ?? ''
  const toggle = (id: string, on: boolean) => {
    const colleagueIds = on ? [...values.colleagueIds, id] : values.colleagueIds.filter((one) => one !== id)
    const made = (ids: string[]) => ids.map(first).filter(Boolean).join(' & ')
    // The name follows the people until someone writes another.
    const follows = values.name.trim() === '' || values.name === made(values.colleagueIds)
    set({ colleagueIds, ...(follows ? { name: made(colleagueIds) } : {}) })
  }
  const lacks =
    values.colleagueIds.length === 0
      ? 'Choose at least one person.'
      : values.from >= values.until
        ? 'The day would end before it begins.'
        : null
  const chosenAway = choices.data?.vehicles.find((one) => one.id === values.vehicleId && one.away)
  const beside = (id: string) => (taken.has(id) ? ` (on the sheet ${taken.get(id)})` : '')
  return (
    <Dialog open onClose={onClose} title={title}>
      <form
        className="flex flex-col gap-4"
        onSubmit={(event) => {
          event.preventDefault()
          if (!lacks && values.name.trim()) onSend(values)
        }}
      >
        {problem}
        {choices.isPending ? <Skeleton lines={3} label="Loading people" /> : null}
        <fieldset className="flex flex-col">
          <legend className="mb-1 font-medium">People</legend>
          {people.map(({ id, name, away }) => (
            <Checkbox
              key={id}
              label={`${name}${beside(id)}`}
              hint={away ? `${name} ${away}.` : undefined}
              checked={values.colleagueIds.includes(id)}
              onChange={(event) => toggle(id, event.target.checked)}
            />
          ))}
        </fieldset>
        <TextInput
          label="Name of the crew"
          required
          maxLength={80}
          value={values.name}
          onChange={(event) => set({ name: event.target.value })}
        />
        <Select
          label="Vehicle"
          none="none"
          value={values.vehicleId ?? ''}
          onChange={(event) => set({ vehicleId: event.target.value || null })}
          hint={chosenAway ? `${chosenAway.name} ${chosenAway.away}.` : undefined}
          choices={(choices.data?.vehicles ?? []).map(({ id, name, away }) => ({
            value: id,
            label: `${name}${beside(id)}${away ? ' (out of service)' : ''}`,
          }))}
        />
        <div className="flex flex-wrap gap-4">
          <TimeInput label="Works from" required value={values.from} onChange={(event) => set({ from: event.target.value })} />
          <TimeInput label="until" required value={values.until} onChange={(event) => set({ until: event.target.value })} />
        </div>
        {withNotes ? (
          <TextArea label="Notes" maxLength={2000} value={values.notes} onChange={(event) => set({ notes: event.target.value })} />
        ) : null}
        <div className="flex flex-wrap items-center justify-end gap-3">
          {lacks ? <span className="text-small text-soft">{lacks}</span> : null}
          <Button onClick={onClose}>Cancel</Button>
          <Button kind="ink" type="submit" busy={busy} disabled={lacks !== null}>
            {sendLabel}
          </Button>
        </div>
      </form>
    </Dialog>
  )
}
