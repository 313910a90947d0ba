'use client'
import type { DaySheet } from '@almanac/contract/day-sheets'
import { Problem } from '@almanac/ui/problem'
import { readFailure } from '@/client/failure'
import { useSession } from '@/client/providers'
import { useCommand } from '@/client/use-command'
import { SheetForm } from './sheet-form.tsx'
import { takenBy } from './taken-by.ts'

export type NewSheetProps = {
  day: string
  sheets: readonly DaySheet[]
  usual: { from: string; until: string }
  onClose: () => void
  onOpened: (crewDayId: string) => void
}

/** Opens a crew's sheet for the day. */
export function NewSheet({ day, sheets, usual, onClose, onOpened }: NewSheetProps) {
  const { api } = useSession()
  const open = useCommand(api.daySheets.open.mutationOptions(), { onDone: ({ crewDayId }) => onOpened(crewDayId) })
  return (
    <SheetForm
      title="Open a day sheet"
      sendLabel="Open the sheet"
      day={day}
      taken={takenBy(sheets)}
      start={{ name: '', colleagueIds: [], vehicleId: null, notes: '', ...usual }}
      busy={open.isPending}
      problem={open.error ? <Problem happened={readFailure(open.error).message} /> : null}
      onClose={onClose}
      onSend={({ notes: _, ...values }) => open.send({ ...values, day })}
    />
  )
}
