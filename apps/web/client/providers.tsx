'use client'
import type { Me } from '@almanac/contract/session'
import { QueryClient, QueryClientProvider } from '@tanstack/react-query'
import { createContext, type ReactNode, useContext, useMemo, useState } from 'react'
import { type Api, apiFor } from './api.ts'
import { readFailure } from './failure.ts'
import { LiveUpdates } from './live-updates.tsx'
import { bindPage } from './page-company.ts'

const Session = createContext<{ me: Me; api: Api } | null>(null)

/** Who is signed in and the API bound to their company. Only under a signed-in layout. */
export function useSession(): { me: Me; api: Api } {
  const value = useContext(Session)
  if (!value) throw new Error('useSession is used outside a signed-in layout')
  return value
}

/** Whether the signed-in person's role carries a permission; the server decides all the same. */
export function useMay(permission: string): boolean {
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

/** Wraps every signed-in screen: queries, session, live updates. */
export function Providers({ me, children }: { me: Me; children: ReactNode }) {
  const [queries] = useState(() => {
    bindPage(me.company.id)
    return newQueryClient()
  })
  const value = useMemo(() => ({ me, api: apiFor(me.company.id) }), [me])
  return (
    <QueryClientProvider client={queries}>
      <Session value={value}>
        <LiveUpdates />
        {children}
      </Session>
    </QueryClientProvider>
  )
}
