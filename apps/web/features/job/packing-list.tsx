'use client'
import { jobKindWords } from '@almanac/records/job-kind'
import { PageHead } from '@almanac/ui/page-head'
import { PrintButton } from '@almanac/ui/print-button'
import { Problem } from '@almanac/ui/problem'
import { Skeleton } from '@almanac/ui/skeleton'
import { TextLink } from '@almanac/ui/text-link'
import { formatAmount } from '@almanac/units/amount-words'
import { formatDay } from '@almanac/units/format-day'
import { useQuery } from '@tanstack/react-query'
import Link from 'next/link'
import { readFailure } from '@/client/failure'
import { useSession } from '@/client/providers'
import { useToday } from '@/client/use-today'
import { WhomLine } from '@/client/whom-line'

/** What goes into the parcel or over the counter: to print, pack by and sign. */
export function PackingList({ jobId }: { jobId: string }) {
  const { api, me } = useSession()
  const today = useToday()
  const job = useQuery(api.jobs.get.queryOptions({ input: { jobId } }))
  const materials = useQuery(api.materials.ofJob.queryOptions({ input: { jobId } }))
  const error = job.error ?? materials.error
  if (error)
    return (
      <Problem
        happened={readFailure(error).message}
        onRetry={() => {
          void job.refetch()
          void materials.refetch()
        }}
      />
    )
  if (!job.data || !materials.data) return <Skeleton lines={8} label="Reading the packing list" />
  const { siteLabel, street, town, whom, kind } = job.data
  const address = [siteLabel === street ? null : siteLabel, street, town].filter(Boolean).join(', ')
  return (
    <>
      <PageHead
        above={
          <TextLink href={`/jobs/${jobId}`} link={Link}>
            {jobKindWords[kind]} at {siteLabel}
          </TextLink>
        }
        title="Packing list"
        lead={`${me.company.name}, ${formatDay(today, me.company)}`}
        actions={<PrintButton />}
      />
      <p>
        <WhomLine whom={whom} />
      </p>
      <p className="mb-6">{address}</p>
      <table className="w-full max-w-[44rem] border-collapse text-left">
        <caption className="sr-only">To pack</caption>
        <thead>
          <tr className="border-b border-edge">
            <th scope="col" className="py-2 pr-4">
              Packed
            </th>
            <th scope="col" className="py-2 pr-4">
              Item
            </th>
            <th scope="col" className="py-2 text-right">
              Quantity
            </th>
          </tr>
        </thead>
        <tbody>
          {materials.data.lines.map((line) => (
            <tr key={line.id} className="border-b border-line">
              <td className="py-3 pr-4">
                <span aria-hidden="true" className="inline-block size-4 border border-edge" />
              </td>
              <td className="py-3 pr-4">{line.name}</td>
              <td className="py-3 text-right">{formatAmount(line.quantity - line.returned, line.unit, me.company)}</td>
            </tr>
          ))}
        </tbody>
      </table>
      {materials.data.lines.length === 0 ? <p className="mt-3 text-soft">Nothing is set aside for this job.</p> : null}
      <p className="mt-12 hidden print:block">Received, date and signature: ______________________________________</p>
    </>
  )
}
