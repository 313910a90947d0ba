'use client'
import type { ImportBatchPage, ImportColumn } from '@almanac/contract/imports'
import { columnLetters } from '@almanac/service-rules/import/clean-cell'
import { importFields } from '@almanac/service-rules/import/fields'
import { mappingProblems } from '@almanac/service-rules/import/gather-cells'
import { Button } from '@almanac/ui/button'
import { DataTable } from '@almanac/ui/data-table'
import { Problem } from '@almanac/ui/problem'
import { Section } from '@almanac/ui/section'
import { Select } from '@almanac/ui/select'
import { useState } from 'react'
import { readFailure } from '@/client/failure'
import { useSession } from '@/client/providers'
import { useCommand } from '@/client/use-command'
import { choiceOf } from './choice-of.ts'
import { ColumnDetail } from './column-detail.tsx'
import { MissingColumns } from './missing-columns.tsx'

const CONFIDENCE = { sure: 'Sure', likely: 'Likely', guess: 'A guess', none: 'Left out' } as const
const FIELD_CHOICES = [{ value: '', label: 'leave out' }, ...importFields.map(({ field, title }) => ({ value: field, label: title }))]

const nameOf = (column: ImportColumn) => column.header || `Column ${columnLetters(column.column)}`

/** What was suggested stays true only while the choice does. */
function reasonOf(column: ImportColumn, suggested: ImportColumn | undefined): string {
  if (column.field !== suggested?.field) return column.field === null ? 'Left out by you.' : 'Chosen by you.'
  return `${CONFIDENCE[column.confidence]}. ${column.reason}`
}

/** Step 1: what each column holds, suggested and adjustable. */
export function ColumnsStep({ batch, onChecked }: { batch: ImportBatchPage; onChecked: () => void }) {
  const { api } = useSession()
  const [columns, setColumns] = useState(batch.columns)
  const check = useCommand(api.imports.check.mutationOptions(), { onDone: onChecked })
  const change = (column: number, part: Partial<ImportColumn>) =>
    setColumns((all) => all.map((one) => (one.column === column ? { ...one, ...part } : one)))
  const problems = mappingProblems({ header: columns.map((one) => one.header), columns })
  const submit = () =>
    check.send({
      batchId: batch.id,
      version: batch.version,
      listRightOn: batch.listRightOn,
      columns: columns.map(choiceOf),
    })
  return (
    <Section title="What each column holds">
      <MissingColumns columns={columns} />
      <DataTable
        caption="Columns of the file"
        rows={columns}
        rowKey={(column) => String(column.column)}
        columns={[
          {
            key: 'header',
            head: 'Column',
            phone: 'title',
            width: '18%',
            cell: (column) => <span className="font-semibold">{nameOf(column)}</span>,
          },
          {
            key: 'examples',
            head: 'For example',
            width: '24%',
            cell: (column) => <span className="break-words text-small text-soft">{column.examples.join(' · ') || 'empty'}</span>,
          },
          {
            key: 'field',
            head: 'Holds',
            width: '26%',
            cell: (column) => (
              <div className="flex w-full flex-col gap-2">
                <Select
                  label={`What ${nameOf(column)} holds`}
                  hideLabel
                  value={column.field ?? ''}
                  choices={FIELD_CHOICES}
                  onChange={(event) =>
                    change(column.column, { field: importFields.find((one) => one.field === event.target.value)?.field ?? null })
                  }
                />
                <ColumnDetail column={column} name={nameOf(column)} onChange={(part) => change(column.column, part)} />
              </div>
            ),
          },
          {
            key: 'reason',
            head: 'Why',
            cell: (column) => (
              <span className="text-small">
                {reasonOf(
                  column,
                  batch.columns.find((one) => one.column === column.column),
                )}
                {column.ask && column.field ? <strong className="mt-1 block text-bead-ink">{column.ask}</strong> : null}
              </span>
            ),
          },
        ]}
      />
      {problems.length > 0 ? <Problem happened={problems.join(' ')} todo="Change the choice above, then go on." /> : null}
      {check.error ? <Problem happened={readFailure(check.error).message} kept="Your choices are still above." /> : null}
      <div className="mt-6 flex flex-wrap items-center gap-4">
        <Button kind="ink" busy={check.isPending} busyLabel="Checking the rows" disabled={problems.length > 0} onClick={submit}>
          Check the rows
        </Button>
        <span className="text-small text-soft">Nothing has changed in your records yet.</span>
      </div>
    </Section>
  )
}
