'use client'
import type { Me } from '@almanac/contract/session'
import type { Permission } from '@almanac/records/permission'
import type { FirmFigures } from '@almanac/softener/firm/firm-figures'
import { mergeFigures } from '@almanac/softener/firm/merge-figures'
import { DisplayProvider } from '@almanac/ui/display'
import type { Messages } from '@almanac/words/messages-of'
import { QueryClient, QueryClientProvider, useQuery } from '@tanstack/react-query'
import { createContext, type ReactNode, useContext, useEffect, useMemo, useState } from 'react'
import { type Api, apiFor } from './api.ts'
import { readFailure } from './failure.ts'
import { LiveUpdates } from './live-updates.tsx'
import { bindPage } from './page-company.ts'
import { WordsProvider } from './words-provider.tsx'

/**
 * `figures` are what the screens compute with: the usual ones with the company's own in their places. `pageDay` is the day on which the server made
 * the page, for its first picture only: what day it is says `useToday`, since a page stays open overnight.
 */
type SessionValue = { me: Omit<Me, 'today'>; pageDay: string; api: Api; figures: FirmFigures }

const Session = createContext<SessionValue | null>(null)

/** Who is signed in, the API bound to their company, and its figures. Only under a signed-in layout. */
export function useSession(): SessionValue {
  const value = useContext(Session)
  if (!value) throw new Error('useSession is used outside a signed-in layout')
  return value
}

/** Whether the signed-in person's role carries a permission; the server decides all the same. */
export function usePermission(permission: Permission): boolean {
  return useSession().me.permissions.includes(permission)
}

const newQueryClient = () =>
  new QueryClient({
    defaultOptions: {
      queries: {
        staleTime: 15_000,
        retry: (count, error) => readFailure(error).retryable && count < 2,
      },
      mutations: { retry: (count, error) => readFailure(error).code === 'unavailable' && count < 1 },
    },
  })

/** Figures come with the page and are fetched again when the owner changes one. */
function SessionValues({ me, children }: { me: Me; children: ReactNode }) {
  const api = useMemo(() => apiFor(me.company.id), [me.company.id])
  const { data } = useQuery({ ...api.firm.figures.queryOptions(), initialData: { rows: me.figures } })
  const value = useMemo(() => {
    const { figures } = mergeFigures(data.rows.filter((row) => row.inUse))
    const { today: pageDay, ...rest } = me
    return { me: rest, pageDay, api, figures }
  }, [me, api, data])
  return <Session value={value}>{children}</Session>
}

/** What this device keeps for a technician without signal is nobody else's to read: whoever comes in next, by whichever door, leaves none of it. */
function useOthersForgotten(me: Me): void {
  useEffect(() => {
    void import('./field/field-store.ts').then(({ forgetOthers, ownerOf }) => forgetOthers(ownerOf(me))).catch(() => {})
  }, [me])
}

/** Wraps every signed-in screen: words, queries, session, live updates. */
export function Providers({ me, messages, children }: { me: Me; messages: Messages; children: ReactNode }) {
  const [queries] = useState(() => {
    bindPage(me.company.id, me.person.id)
    return newQueryClient()
  })
  useOthersForgotten(me)
  return (
    <QueryClientProvider client={queries}>
      <SessionValues me={me}>
        <DisplayProvider value={me.company}>
          <WordsProvider locale={me.company.locale} timeZone={me.company.timeZone} messages={messages}>
            <LiveUpdates />
            {children}
          </WordsProvider>
        </DisplayProvider>
      </SessionValues>
    </QueryClientProvider>
  )
}
