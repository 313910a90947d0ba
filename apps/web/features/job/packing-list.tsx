'use client'
import { PageHead } from '@almanac/ui/page-head'
import { PrintButton } from '@almanac/ui/print-button'
import { Problem } from '@almanac/ui/problem'
import { Skeleton } from '@almanac/ui/skeleton'
import { TextLink } from '@almanac/ui/text-link'
import { formatDay } from '@almanac/units/format-day'
import { useWords } from '@almanac/words/use-words'
import { useQuery } from '@tanstack/react-query'
import Link from 'next/link'
import { readFailure } from '@/client/failure'
import { useSession } from '@/client/providers'
import { useStockAmount } from '@/client/use-stock-amount'
import { useToday } from '@/client/use-today'
import { WhomLine } from '@/client/whom-line'

/** What goes into the parcel or over the counter: to print, pack by and sign. */
export function PackingList({ jobId }: { jobId: string }) {
  const { api, me } = useSession()
  const today = useToday()
  const [words, kinds, jobs] = [useWords('materials'), useWords('jobKind'), useWords('job')]
  const amountText = useStockAmount()
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
  if (!job.data || !materials.data) return <Skeleton lines={8} label={words('loadingList')} />
  const { siteLabel, street, town, whom, kind } = job.data
  const address = [siteLabel === street ? null : siteLabel, street, town].filter(Boolean).join(', ')
  return (
    <>
      <PageHead
        above={
          <TextLink href={`/jobs/${jobId}`} link={Link}>
            {jobs('at', { kind: kinds(kind), site: siteLabel })}
          </TextLink>
        }
        title={words('packingList')}
        lead={`${me.company.name}, ${formatDay(today, me.company)}`}
        actions={<PrintButton />}
      />
      <p>
        <WhomLine whom={whom} />
      </p>
      <p className="mb-6">{address}</p>
      <table className="w-full max-w-[44rem] border-collapse text-left">
        <caption className="sr-only">{words('toPack')}</caption>
        <thead>
          <tr className="border-b border-edge">
            <th scope="col" className="py-2 pr-4">
              {words('packed')}
            </th>
            <th scope="col" className="py-2 pr-4">
              {words('item')}
            </th>
            <th scope="col" className="py-2 text-right">
              {words('quantity')}
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
              <td className="py-3 text-right">{amountText(line.quantity - line.returned, line.unit)}</td>
            </tr>
          ))}
        </tbody>
      </table>
      {materials.data.lines.length === 0 ? <p className="mt-3 text-soft">{words('noneForJob')}</p> : null}
      <p className="mt-12 hidden print:block">{words('received')} ______________________________________</p>
    </>
  )
}
