'use client'
import type { DaySheet, SheetVisit } from '@almanac/contract/day-sheets'
import { jobKindWords } from '@almanac/records/job-kind'
import { Button } from '@almanac/ui/button'
import { Dialog } from '@almanac/ui/dialog'
import { useDisplay } from '@almanac/ui/display'
import { Select } from '@almanac/ui/select'
import { TimeInput } from '@almanac/ui/time-input'
import { clockIn, minutesBetween } from '@almanac/units/calendar/zone-clock'
import { formatDuration } from '@almanac/units/format-clock'
import { useState } from 'react'
import { useSession } from '@/client/providers'

export type MoveDialogProps = {
  visit: SheetVisit
  sheet: DaySheet
  others: readonly DaySheet[]
  onClose: () => void
  onMove: (crewDayId: string, at: string) => void
}

/** Asks for another time, and perhaps another of the day's sheets. The database decides whether it goes. */
export function MoveDialog({ visit, sheet, others, onClose, onMove }: MoveDialogProps) {
  const display = useDisplay()
  const { me } = useSession()
  const [at, setAt] = useState(clockIn(me.company.timeZone, visit.startsAt))
  const [crewDayId, setCrewDayId] = useState(sheet.id)
  const same = at === clockIn(me.company.timeZone, visit.startsAt) && crewDayId === sheet.id
  return (
    <Dialog open onClose={onClose} title={`Move ${jobKindWords[visit.kind]} · ${visit.siteLabel}`}>
      <form
        className="flex flex-col gap-4"
        onSubmit={(event) => {
          event.preventDefault()
          if (at && !same) onMove(crewDayId, at)
        }}
      >
        <TimeInput
          label="Begins at"
          hint={`Takes ${formatDuration(minutesBetween(visit.startsAt, visit.endsAt), display)}.`}
          value={at}
          onChange={(event) => setAt(event.target.value)}
          required
        />
        <Select
          label="On the sheet of"
          value={crewDayId}
          onChange={(event) => setCrewDayId(event.target.value)}
          choices={[sheet, ...others].map((one) => ({ value: one.id, label: one.name }))}
        />
        <div className="flex justify-end gap-3">
          <Button onClick={onClose}>Cancel</Button>
          <Button kind="ink" type="submit" disabled={same || !at}>
            Move
          </Button>
        </div>
      </form>
    </Dialog>
  )
}
