'use client'
import { LinkButton } from '@almanac/ui/link-button'
import { Notice } from '@almanac/ui/notice'
import { useQuery } from '@tanstack/react-query'
import Link from 'next/link'
import { useSession } from './providers.tsx'

const MOST = 20

/** Tells the dispatcher that something of a tablet waits for them; nothing where nothing does. */
export function TabletsNote() {
  const { api } = useSession()
  const { data } = useQuery(api.field.setAside.queryOptions({ input: { limit: MOST } }))
  const count = data?.rows.length ?? 0
  if (count === 0) return null
  const more = data?.nextCursor ? ' or more' : ''
  return (
    <Notice
      kind="mind"
      action={
        <LinkButton href="/from-tablets" link={Link}>
          Look at {count === 1 ? 'it' : 'them'}
        </LinkButton>
      }
    >
      {count === 1 ? 'One entry from a tablet needs' : `${count}${more} entries from tablets need`} someone’s eye.
    </Notice>
  )
}
