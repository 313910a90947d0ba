'use client'
import { useQuery } from '@tanstack/react-query'
import { useSession } from '@/client/providers'

/** What heads a printed day: the company's logo and name. On the screen it is not there. */
export function PaperHead() {
  const { api } = useSession()
  const { data } = useQuery(api.firm.letterhead.queryOptions())
  if (!data) return null
  return (
    <div aria-hidden="true" className="mb-3 hidden items-end justify-between gap-6 print:flex">
      {data.logo ? (
        // biome-ignore lint/performance/noImgElement: a file of a few kilobytes behind the session, which the framework's own images can't read
        <img src="/api/logo" alt="" className="h-auto max-h-12 w-auto max-w-48" />
      ) : null}
      <span className="font-semibold">{data.firmName}</span>
    </div>
  )
}
