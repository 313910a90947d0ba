'use client'
import type { ExportRow } from '@almanac/contract/exports'
import { exportStateWords } from '@almanac/records/export-state'
import { Button } from '@almanac/ui/button'
import { DataTable } from '@almanac/ui/data-table'
import { useDisplay } from '@almanac/ui/display'
import { Empty } from '@almanac/ui/empty'
import { PageHead } from '@almanac/ui/page-head'
import { Problem } from '@almanac/ui/problem'
import { ProgressLine } from '@almanac/ui/progress-line'
import { Skeleton } from '@almanac/ui/skeleton'
import { StatusWord } from '@almanac/ui/status-word'
import { TextLink } from '@almanac/ui/text-link'
import { formatInstant } from '@almanac/units/format-clock'
import { showNumber, showWhole } from '@almanac/units/format-number'
import { useQuery } from '@tanstack/react-query'
import { readFailure } from '@/client/failure'
import { useSession } from '@/client/providers'
import { useCommand } from '@/client/use-command'

const LOOKS = {
  waiting: { shape: 'hollow', tone: 'water' },
  writing: { shape: 'half', tone: 'water' },
  ready: { shape: 'tick', tone: 'done' },
  failed: { shape: 'triangle', tone: 'danger' },
  removed: { shape: 'cross', tone: 'soft' },
} as const

const underWay = (row: ExportRow) => row.state === 'waiting' || row.state === 'writing'

/** Everything out: one archive of the company's records, made by the worker while this page shows how far it is. */
export function Exports() {
  const display = useDisplay()
  const { api } = useSession()
  const list = useQuery(api.exports.list.queryOptions())
  const start = useCommand(api.exports.start.mutationOptions())
  const rows = list.data?.rows ?? []
  const current = rows.find(underWay)
  const button = (
    <Button kind="ink" busy={start.isPending} onClick={() => start.send({})}>
      Export everything
    </Button>
  )
  return (
    <>
      <PageHead
        title="Export"
        lead="Everything your company has on record, in one ZIP file: a spreadsheet for each table, the same as JSON, and the lists you imported. Passwords are never in it."
        actions={rows.length > 0 && !current ? button : undefined}
      />
      {list.error ? <Problem happened={readFailure(list.error).message} onRetry={() => void list.refetch()} /> : null}
      {start.error ? <Problem happened={readFailure(start.error).message} /> : null}
      {list.isPending ? <Skeleton lines={4} label="Loading the exports" /> : null}
      {current ? (
        <>
          <ProgressLine
            label={current.state === 'waiting' ? 'Waiting for its turn' : 'Writing your records'}
            value={current.state === 'waiting' ? undefined : current.tablesDone}
            max={current.tablesTotal}
            detail={`${current.tablesDone} of ${current.tablesTotal} tables, ${showWhole(current.rowsWritten, display)} rows`}
          />
          <p className="max-w-[70ch] text-soft">You can leave this page. The file appears here when it’s ready.</p>
        </>
      ) : null}
      {list.isSuccess ? (
        <DataTable
          caption="Exports"
          rows={rows.filter((row) => !underWay(row))}
          rowKey={(row) => row.id}
          columns={[
            { key: 'when', head: 'Started', phone: 'title', cell: (row) => formatInstant(row.createdAt, display) },
            {
              key: 'state',
              head: 'State',
              cell: (row) => <StatusWord {...LOOKS[row.state]}>{row.failure ?? exportStateWords[row.state]}</StatusWord>,
            },
            { key: 'rows', head: 'Rows', align: 'right', cell: (row) => showWhole(row.rowsWritten, display) },
            {
              key: 'size',
              head: 'Size',
              align: 'right',
              cell: (row) => (row.bytes === null ? '' : `${showNumber(row.bytes / 1e6, 1, display)} MB`),
            },
            {
              key: 'file',
              head: 'File',
              cell: (row) => (row.state === 'ready' ? <TextLink href={`/api/exports/${row.id}`}>Download</TextLink> : ''),
            },
          ]}
          empty={
            current ? undefined : (
              <Empty title="No export yet" action={button}>
                Take your records with you at any time. A file stays here for seven days.
              </Empty>
            )
          }
        />
      ) : null}
    </>
  )
}
