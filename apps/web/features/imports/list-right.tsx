import type { ImportBatchPage } from '@almanac/contract/imports'
import { Button } from '@almanac/ui/button'
import { DayInput } from '@almanac/ui/day-input'
import { useDisplay } from '@almanac/ui/display'
import { Problem } from '@almanac/ui/problem'
import { Section } from '@almanac/ui/section'
import { formatDay } from '@almanac/units/format-day'
import { useState } from 'react'
import { readFailure } from '@/client/failure'
import { useSession } from '@/client/providers'
import { useCommand } from '@/client/use-command'
import { useToday } from '@/client/use-today'
import { choiceOf } from './choice-of.ts'
import { plural } from './import-words.tsx'

/** The one question that decides most of what a list can tell: on which day these softeners were still known to work. */
export function ListRight({ batch }: { batch: ImportBatchPage }) {
  const display = useDisplay()
  const { api } = useSession()
  const today = useToday()
  const [day, setDay] = useState(batch.listRightOn ?? '')
  const check = useCommand(api.imports.check.mutationOptions())
  const unseen = batch.counts?.unseen ?? 0
  if (unseen === 0 && batch.listRightOn === null) return null
  const keep = (listRightOn: string | null) => {
    setDay(listRightOn ?? '')
    check.send({ batchId: batch.id, version: batch.version, columns: batch.columns.map(choiceOf), listRightOn })
  }
  return (
    <Section title="When was this list last right, and were these softeners working then?">
      <p className="mb-3 max-w-[70ch]">
        {batch.listRightOn
          ? `Softeners without a visit of their own count as seen working on ${formatDay(batch.listRightOn, display)}.`
          : `Nothing says when ${plural(unseen, 'bed', 'beds', display)} last worked. With a day, they count as seen working on it. Without one, old beds may show as failed.`}
      </p>
      <form
        className="flex flex-wrap items-end gap-3"
        onSubmit={(event) => {
          event.preventDefault()
          if (day) keep(day)
        }}
      >
        <DayInput label="The list was right on" max={today} value={day} onChange={(event) => setDay(event.target.value)} />
        <Button type="submit" busy={check.isPending} busyLabel="Checking the rows" disabled={!day || day === batch.listRightOn}>
          Use this day
        </Button>
        {batch.listRightOn ? (
          <Button disabled={check.isPending} onClick={() => keep(null)}>
            Nobody knows
          </Button>
        ) : null}
      </form>
      {check.error ? <Problem happened={readFailure(check.error).message} kept="The rows are still checked as before." /> : null}
    </Section>
  )
}
