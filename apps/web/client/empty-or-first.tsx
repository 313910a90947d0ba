'use client'
import { Empty, type EmptyProps } from '@almanac/ui/empty'
import { useQuery } from '@tanstack/react-query'
import { FirstRecords } from './first-records.tsx'
import { useSession } from './providers.tsx'

/** An empty list that fills from the company's sites: where there are none yet, the way to the first of them; else what the list itself says. */
export function EmptyOrFirst({ first, ...empty }: EmptyProps & { /** The title where no site is on record. */ first: string }) {
  const { api } = useSession()
  const sites = useQuery(api.sites.list.queryOptions({ input: { limit: 1 } }))
  if (sites.isPending) return null
  return sites.data?.rows.length === 0 ? <FirstRecords title={first} /> : <Empty {...empty} />
}
