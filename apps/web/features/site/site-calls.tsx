'use client'
import { Problem } from '@almanac/ui/problem'
import { Section } from '@almanac/ui/section'
import { Skeleton } from '@almanac/ui/skeleton'
import { useQuery } from '@tanstack/react-query'
import { CallBackList } from '@/client/call/call-back-list'
import { CallList } from '@/client/call/call-list'
import { readFailure } from '@/client/failure'
import { useSession } from '@/client/providers'

/** Whom to call about this site, and what was said before. */
export function SiteCalls({ siteId }: { siteId: string }) {
  const { api } = useSession()
  const query = useQuery(api.calls.ofSite.queryOptions({ input: { siteId } }))
  return (
    <Section title="Calls">
      {query.error ? <Problem happened={readFailure(query.error).message} onRetry={() => void query.refetch()} /> : null}
      {query.isPending ? <Skeleton lines={3} label="Loading the calls" /> : null}
      {query.data && query.data.callBacks.length > 0 ? <CallBackList rows={query.data.callBacks} /> : null}
      {query.data?.calls.length === 0 ? <p className="text-soft">No calls yet.</p> : null}
      {query.data && query.data.calls.length > 0 ? <CallList calls={query.data.calls} ofSite /> : null}
    </Section>
  )
}
