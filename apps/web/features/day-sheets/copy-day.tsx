'use client'
import { Button } from '@almanac/ui/button'
import { useDisplay } from '@almanac/ui/display'
import { Problem } from '@almanac/ui/problem'
import { useToast } from '@almanac/ui/toast'
import { formatDay, formatNearDay } from '@almanac/units/format-day'
import { readFailure } from '@/client/failure'
import { useSession } from '@/client/providers'
import { useCommand } from '@/client/use-command'

const REASONS = {
  hours: 'its hours don’t work on this day',
  name: 'a sheet of that name is open',
  person: 'one of its people is on another sheet',
  vehicle: 'its vehicle is on another sheet',
}

/** Opens the crews of the last day that had sheets for this day too. */
export function CopyDay({ day, copyFrom, main }: { day: string; copyFrom: string | null; main?: boolean }) {
  const display = useDisplay()
  const { api } = useSession()
  const showToast = useToast()
  const copy = useCommand(api.daySheets.copy.mutationOptions(), {
    onDone: ({ fromDay, opened, left }) => {
      const why = [...new Set(left.map((one) => REASONS[one.reason]))].join('; ')
      const count = `${opened.length} ${opened.length === 1 ? 'sheet' : 'sheets'} opened as on ${formatDay(fromDay, display)}`
      showToast({ text: left.length === 0 ? `${count}.` : `${count}, ${left.length} left out: ${why}.` })
    },
  })
  if (!copyFrom) return null
  return (
    <>
      <Button kind={main ? 'ink' : 'line'} busy={copy.isPending} onClick={() => copy.send({ day })}>
        Copy the crews of {formatNearDay(copyFrom, display)}
      </Button>
      {copy.error ? <Problem happened={readFailure(copy.error).message} /> : null}
    </>
  )
}
