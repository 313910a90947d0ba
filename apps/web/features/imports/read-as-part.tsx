'use client'
import type { ImportBatchPage } from '@almanac/contract/imports'
import { Button } from '@almanac/ui/button'
import { Problem } from '@almanac/ui/problem'
import { Select } from '@almanac/ui/select'
import { TextInput } from '@almanac/ui/text-input'
import { readNumber } from '@almanac/units/read-number'
import { useRouter } from 'next/navigation'
import { useState } from 'react'
import { readFailure } from '@/client/failure'
import { useSession } from '@/client/providers'
import { useCommand } from '@/client/use-command'

const MOST_LINES = 200_000

/** Another sheet, or another line for the headings, where the file was read otherwise than its owner reads it. */
export function ReadAsPart({ batch }: { batch: ImportBatchPage }) {
  const router = useRouter()
  const { api } = useSession()
  const [sheet, setSheet] = useState(batch.sheet ?? batch.sheets[0] ?? '')
  const [line, setLine] = useState(batch.headerLine > 0 ? String(batch.headerLine) : '')
  const again = useCommand(api.imports.readAgain.mutationOptions(), { onDone: ({ batchId }) => router.push(`/imports/${batchId}`) })
  const typed = line.trim()
  const number = readNumber(typed)
  const wrong = typed !== '' && (number === null || !Number.isInteger(number) || number < 1 || number > MOST_LINES)
  const send = () =>
    again.send({
      ...{ batchId: batch.id, version: batch.version },
      ...{ sheet: batch.sheets.length > 0 ? sheet : null, headingLine: typed === '' ? null : number },
    })
  return (
    <details className="my-4">
      <summary className="cursor-pointer">{batch.sheets.length > 1 ? 'Wrong sheet or wrong headings?' : 'Wrong headings?'}</summary>
      <div className="mt-3 flex flex-wrap items-end gap-4">
        {batch.sheets.length > 1 ? (
          <Select
            label="Sheet with your list"
            value={sheet}
            choices={batch.sheets.map((name) => ({ value: name, label: name }))}
            onChange={(event) => setSheet(event.target.value)}
          />
        ) : null}
        <TextInput
          label="Line with the headings"
          hint="The line’s number in your spreadsheet. Leave it empty if no line names the columns."
          inputMode="numeric"
          value={line}
          error={wrong ? 'Type the number of a line, such as 4.' : undefined}
          onChange={(event) => setLine(event.target.value)}
        />
        <Button busy={again.isPending} busyLabel="Reading it again" disabled={wrong} onClick={send}>
          Read the file like this
        </Button>
      </div>
      <p className="mt-2 text-small text-soft">Your choices for the columns below are cleared.</p>
      {again.error ? <Problem happened={readFailure(again.error).message} /> : null}
    </details>
  )
}
