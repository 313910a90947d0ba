'use client'
import type { JobPage } from '@almanac/contract/jobs'
import type { MaterialLine } from '@almanac/contract/materials'
import { isOpenJob } from '@almanac/records/job-state'
import { type MaterialState, openMaterialStates } from '@almanac/records/stock'
import { Button } from '@almanac/ui/button'
import { DataTable } from '@almanac/ui/data-table'
import { LinkButton } from '@almanac/ui/link-button'
import { Problem } from '@almanac/ui/problem'
import { Section } from '@almanac/ui/section'
import { Skeleton } from '@almanac/ui/skeleton'
import { StatusWord } from '@almanac/ui/status-word'
import { formatInstant } from '@almanac/units/format-clock'
import { formatMoney } from '@almanac/units/money'
import { useWords } from '@almanac/words/use-words'
import { useQuery } from '@tanstack/react-query'
import { useState } from 'react'
import { readFailure } from '@/client/failure'
import { useSession } from '@/client/providers'
import { useCommand } from '@/client/use-command'
import { useStockAmount } from '@/client/use-stock-amount'
import { AddMaterial } from './add-material.tsx'
import { TakeBackMaterial } from './take-back-material.tsx'

const isOpen = (state: MaterialState) => openMaterialStates.includes(state)

/** What a customer asked for from the stores: lines set aside, until they are collected, shipped or delivered; what comes back. */
export function Materials({ job, mayChange }: { job: JobPage; mayChange: boolean }) {
  const { api, me } = useSession()
  const display = me.company
  const words = useWords('materials')
  const amountText = useStockAmount()
  const query = useQuery(api.materials.ofJob.queryOptions({ input: { jobId: job.id } }))
  const [returning, setReturning] = useState<MaterialLine | null>(null)
  const handOver = useCommand(api.materials.handOver.mutationOptions())
  const set = useCommand(api.materials.set.mutationOptions())
  if (query.error) return <Problem happened={readFailure(query.error).message} onRetry={() => void query.refetch()} />
  if (!query.data) return <Skeleton lines={3} label={words('loading')} />
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
          {words('shortBy', { amount: amountText(-line.free, line.unit) })}
        </StatusWord>
      )
    const when =
      line.handedAt && line.way ? words(`way/${line.way}`, { when: formatInstant(line.handedAt, display) }) : words(`state/${line.state}`)
    return line.returned > 0 ? words('cameBack', { state: when, amount: amountText(line.returned, line.unit) }) : when
  }
  return (
    <Section
      title={words('title')}
      actions={lines.length > 0 ? <LinkButton href={`/jobs/${job.id}/packing-list`}>{words('packingList')}</LinkButton> : null}
    >
      {lines.length === 0 ? <p className="text-soft">{words('none')}</p> : null}
      {lines.length > 0 ? (
        <DataTable<MaterialLine>
          caption={words('title')}
          rows={lines}
          rowKey={(line) => line.id}
          columns={[
            { key: 'name', head: words('item'), phone: 'title', cell: (line) => line.name },
            { key: 'quantity', head: words('quantity'), align: 'right', cell: (line) => amountText(line.quantity, line.unit) },
            { key: 'state', head: words('state'), cell: stateOf },
            {
              key: 'actions',
              head: <span className="sr-only">{words('actions')}</span>,
              align: 'right',
              cell: (line) =>
                open && isOpen(line.state) ? (
                  <Button onClick={() => set.send({ ...at, stockItemId: line.stockItemId, quantity: 0 })} busy={set.isPending}>
                    {words('takeOff')}
                    <span className="sr-only"> {line.name}</span>
                  </Button>
                ) : mayChange && line.state === 'handed-over' ? (
                  <Button onClick={() => setReturning(line)}>
                    {words('back')}
                    <span className="sr-only">: {line.name}</span>
                  </Button>
                ) : null,
            },
          ]}
        />
      ) : null}
      {costMinor > 0 ? (
        <p className="mt-2 text-soft">
          {priced.length < lines.length
            ? words('costPart', { money: formatMoney(costMinor, display), count: String(lines.length - priced.length) })
            : words('cost', { money: formatMoney(costMinor, display) })}
        </p>
      ) : null}
      {open ? <AddMaterial job={job} lines={aside} /> : null}
      {failure ? <Problem happened={readFailure(failure).message} /> : null}
      {open && aside.length > 0 ? (
        <p className="mt-4 flex flex-wrap gap-2 print:hidden">
          <Button kind="ink" busy={handOver.isPending} onClick={() => handOver.send({ ...at, way: 'collected' })}>
            {words('collected')}
          </Button>
          <Button busy={handOver.isPending} onClick={() => handOver.send({ ...at, way: 'shipped' })}>
            {words('shipped')}
          </Button>
          <span className="basis-full text-small text-soft">{words('eitherCloses')}</span>
        </p>
      ) : null}
      {returning ? <TakeBackMaterial line={returning} onClose={() => setReturning(null)} /> : null}
    </Section>
  )
}
