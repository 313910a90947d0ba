'use client'
import type { JobPage } from '@almanac/contract/jobs'
import type { MaterialLine } from '@almanac/contract/materials'
import { isOpenJob } from '@almanac/records/job-state'
import { type MaterialState, materialStateWords, materialWayWords } from '@almanac/records/stock'
import { Button } from '@almanac/ui/button'
import { DataTable } from '@almanac/ui/data-table'
import { LinkButton } from '@almanac/ui/link-button'
import { Problem } from '@almanac/ui/problem'
import { Section } from '@almanac/ui/section'
import { Skeleton } from '@almanac/ui/skeleton'
import { StatusWord } from '@almanac/ui/status-word'
import { formatAmount } from '@almanac/units/amount-words'
import { formatInstant } from '@almanac/units/format-clock'
import { formatMoney } from '@almanac/units/money'
import { useQuery } from '@tanstack/react-query'
import { useState } from 'react'
import { readFailure } from '@/client/failure'
import { useSession } from '@/client/providers'
import { useCommand } from '@/client/use-command'
import { AddMaterial } from './add-material.tsx'
import { TakeBackMaterial } from './take-back-material.tsx'

const isOpen = (state: MaterialState) => state === 'reserved' || state === 'picked'

/** What a customer asked for from the stores: lines set aside, until they are collected, shipped or delivered; what comes back. */
export function Materials({ job, mayChange }: { job: JobPage; mayChange: boolean }) {
  const { api, me } = useSession()
  const display = me.company
  const query = useQuery(api.materials.ofJob.queryOptions({ input: { jobId: job.id } }))
  const [returning, setReturning] = useState<MaterialLine | null>(null)
  const handOver = useCommand(api.materials.handOver.mutationOptions())
  const set = useCommand(api.materials.set.mutationOptions())
  if (query.error) return <Problem happened={readFailure(query.error).message} onRetry={() => void query.refetch()} />
  if (!query.data) return <Skeleton lines={3} label="Reading the materials" />
  const { lines } = query.data
  const aside = lines.filter((line) => isOpen(line.state))
  const open = mayChange && isOpenJob(job.state)
  const at = { jobId: job.id, jobVersion: job.version }
  const priced = lines.filter((line) => line.priceMinor !== null)
  const costMinor = priced.reduce((sum, line) => sum + (line.priceMinor ?? 0) * (line.quantity - line.returned), 0)
  const failure = handOver.error ?? set.error
  const stateOf = (line: MaterialLine) => {
    if (isOpen(line.state) && line.free < 0)
      return (
        <StatusWord shape="triangle" tone="danger">
          short by {formatAmount(-line.free, line.unit, display)}
        </StatusWord>
      )
    const when =
      line.handedAt && line.way ? `${materialWayWords[line.way]} ${formatInstant(line.handedAt, display)}` : materialStateWords[line.state]
    return line.returned > 0 ? `${when}; ${formatAmount(line.returned, line.unit, display)} came back` : when
  }
  return (
    <Section
      title="Materials"
      actions={lines.length > 0 ? <LinkButton href={`/jobs/${job.id}/packing-list`}>Packing list</LinkButton> : null}
    >
      {lines.length === 0 ? <p className="text-soft">Nothing is set aside yet. Add what the customer asked for.</p> : null}
      {lines.length > 0 ? (
        <DataTable<MaterialLine>
          caption="Materials"
          rows={lines}
          rowKey={(line) => line.id}
          columns={[
            { key: 'name', head: 'Item', phone: 'title', cell: (line) => line.name },
            { key: 'quantity', head: 'Quantity', align: 'right', cell: (line) => formatAmount(line.quantity, line.unit, display) },
            { key: 'state', head: 'State', cell: stateOf },
            {
              key: 'actions',
              head: <span className="sr-only">Actions</span>,
              align: 'right',
              cell: (line) =>
                open && isOpen(line.state) ? (
                  <Button onClick={() => set.send({ ...at, stockItemId: line.stockItemId, quantity: 0 })} busy={set.isPending}>
                    Take off<span className="sr-only"> {line.name}</span>
                  </Button>
                ) : mayChange && line.state === 'handed-over' ? (
                  <Button onClick={() => setReturning(line)}>
                    Came back<span className="sr-only">: {line.name}</span>
                  </Button>
                ) : null,
            },
          ]}
        />
      ) : null}
      {costMinor > 0 ? (
        <p className="mt-2 text-soft">
          {formatMoney(costMinor, display)} by the prices in the stores
          {priced.length < lines.length ? `; ${lines.length - priced.length} without a price` : ''}.
        </p>
      ) : null}
      {open ? <AddMaterial job={job} lines={aside} /> : null}
      {failure ? <Problem happened={readFailure(failure).message} /> : null}
      {open && aside.length > 0 ? (
        <p className="mt-4 flex flex-wrap gap-2 print:hidden">
          <Button kind="ink" busy={handOver.isPending} onClick={() => handOver.send({ ...at, way: 'collected' })}>
            Collected
          </Button>
          <Button busy={handOver.isPending} onClick={() => handOver.send({ ...at, way: 'shipped' })}>
            Shipped
          </Button>
          <span className="basis-full text-small text-soft">Either closes the job. For a crew to bring it, book a visit instead.</span>
        </p>
      ) : null}
      {returning ? <TakeBackMaterial line={returning} onClose={() => setReturning(null)} /> : null}
    </Section>
  )
}
