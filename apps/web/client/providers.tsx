'use client'
import type { FigureRow } from '@almanac/contract/firm'
import type { Me } from '@almanac/contract/session'
import type { Permission } from '@almanac/records/permission'
import type { FirmFigures } from '@almanac/softener/firm/firm-figures'
import { USUAL_FIGURES } from '@almanac/softener/firm/usual-figures'
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

/** Whoever is signed in, as the server makes the page: `own` are the figures with the company's own in their places, null where it has none. */
export type SignedIn = Me & { own?: FirmFigures | null }

/** What the rows come to without being read: null where they have to be, as with a page that a tablet kept from the release before. */
const figuresOf = ({ own, figures }: SignedIn): FirmFigures | null => own ?? (figures.some((row) => row.inUse) ? null : USUAL_FIGURES)

/** Figures come with the page, and rows that the owner changed since are read: what reads them is not among the page's first scripts. */
function useFigures(me: SignedIn, rows: readonly FigureRow[]): FirmFigures | null {
  const [read, setRead] = useState<{ rows: readonly FigureRow[]; figures: FirmFigures } | null>(null)
  const [first] = useState(() => ({ rows, figures: figuresOf(me) }))
  const isFirst = rows === first.rows && first.figures !== null
  useEffect(() => {
    if (isFirst) return
    let left = false
    void import('@almanac/softener/firm/merge-figures').then(({ mergeFigures }) => {
      if (!left) setRead({ rows, figures: mergeFigures(rows.filter((row) => row.inUse)).figures })
    })
    return () => {
      left = true
    }
  }, [rows, isFirst])
  return isFirst ? first.figures : (read?.figures ?? first.figures)
}

/** Figures come with the page and are fetched again when the owner changes one. */
function SessionValues({ me, children }: { me: SignedIn; children: ReactNode }) {
  const api = useMemo(() => apiFor(me.company.id), [me.company.id])
  const { data } = useQuery({ ...api.firm.figures.queryOptions(), initialData: { rows: me.figures } })
  const figures = useFigures(me, data.rows)
  const value = useMemo(() => {
    const { today: pageDay, own: _own, ...rest } = me
    return figures && { me: rest, pageDay, api, figures }
  }, [me, api, figures])
  // Nothing is computed with figures that are not the company's.
  return value && <Session value={value}>{children}</Session>
}

/** What this device keeps for a technician without signal is nobody else's to read: whoever comes in next, by whichever door, leaves none of it. */
function useOthersForgotten(me: Me): void {
  useEffect(() => {
    void import('./field/field-store.ts').then(({ forgetOthers, ownerOf }) => forgetOthers(ownerOf(me))).catch(() => {})
  }, [me])
}

/** Wraps every signed-in screen: words, queries, session, live updates. */
export function Providers({ me, messages, children }: { me: SignedIn; messages: Messages; children: ReactNode }) {
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
