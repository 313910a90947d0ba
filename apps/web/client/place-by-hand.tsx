'use client'
import { Button } from '@almanac/ui/button'
import { DayInput } from '@almanac/ui/day-input'
import { Dialog } from '@almanac/ui/dialog'
import { useDisplay } from '@almanac/ui/display'
import { Problem } from '@almanac/ui/problem'
import { Select } from '@almanac/ui/select'
import { TextLink } from '@almanac/ui/text-link'
import { TimeInput } from '@almanac/ui/time-input'
import { isIsoDay } from '@almanac/units/calendar/calendar-day'
import { formatDuration } from '@almanac/units/format-clock'
import { keepPreviousData, useQuery } from '@tanstack/react-query'
import Link from 'next/link'
import { useState } from 'react'
import { readFailure } from './failure.ts'
import { useSession } from './providers.tsx'

/** A crew's sheet of a day, and a clock time on it. */
export type HandPlace = { day: string; crewDayId: string; at: string }

type Props = {
  title: string
  minutes: number
  start: HandPlace
  sendLabel: string
  /** The place it starts from is a suggestion, and may be taken; else the visit stands there already. */
  mayStay?: boolean
  onClose: () => void
  onSend: (place: HandPlace) => void
}

/** Any day, any crew with a sheet on it, any time: what is unusual about it is asked afterwards. */
export function PlaceByHand({ title, minutes, start, sendLabel, mayStay = false, onClose, onSend }: Props) {
  const display = useDisplay()
  const { api } = useSession()
  const [day, setDay] = useState(start.day)
  const [crewDayId, setCrewDayId] = useState(start.crewDayId)
  const [at, setAt] = useState(start.at)
  const isDay = isIsoDay(day)
  const sheets = useQuery(api.daySheets.day.queryOptions({ input: { day }, enabled: isDay, placeholderData: keepPreviousData }))
  const crews = sheets.data?.day === day ? sheets.data.sheets : []
  // The same crew on another day has a sheet of its own; where it has none, the first that has.
  const nameOf = (id: string) => sheets.data?.sheets.find((one) => one.id === id)?.name
  const [crewName, setCrewName] = useState<string | null>(null)
  const chosen = crews.find((one) => one.id === crewDayId) ?? crews.find((one) => one.name === crewName) ?? crews[0]
  const same = !mayStay && chosen?.id === start.crewDayId && at === start.at
  return (
    <Dialog open onClose={onClose} title={title}>
      <form
        className="flex flex-col gap-4"
        onSubmit={(event) => {
          event.preventDefault()
          if (chosen && at && !same) onSend({ day, crewDayId: chosen.id, at })
        }}
      >
        <DayInput
          label="Day"
          value={day}
          onChange={(event) => {
            setCrewName(chosen?.name ?? crewName)
            setDay(event.target.value)
          }}
          required
        />
        {sheets.error ? <Problem happened={readFailure(sheets.error).message} onRetry={() => void sheets.refetch()} /> : null}
        {isDay && sheets.data?.day === day && crews.length === 0 ? (
          <p>
            No crew has a sheet on that day.{' '}
            <TextLink href={`/day-sheets?day=${day}`} link={Link}>
              Open one
            </TextLink>
          </p>
        ) : (
          <Select
            label="On the sheet of"
            value={chosen?.id ?? ''}
            onChange={(event) => {
              setCrewDayId(event.target.value)
              setCrewName(nameOf(event.target.value) ?? null)
            }}
            choices={crews.map((one) => ({ value: one.id, label: one.name }))}
          />
        )}
        <TimeInput
          label="Begins at"
          hint={`Takes ${formatDuration(minutes, display)}.`}
          value={at}
          onChange={(event) => setAt(event.target.value)}
          required
        />
        <div className="flex justify-end gap-3">
          <Button onClick={onClose}>Cancel</Button>
          <Button kind="ink" type="submit" disabled={!chosen || !at || same}>
            {sendLabel}
          </Button>
        </div>
      </form>
    </Dialog>
  )
}
