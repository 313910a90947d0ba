'use client'
import { useQuery } from '@tanstack/react-query'
import { readFailure } from '../failure.ts'
import { useField } from './field-home.tsx'
import { keep, keptAnswer } from './field-store.ts'

/** With a weak signal a request may hang for ever: what is kept is shown meanwhile, and after this long it counts as failed. */
const PATIENCE_MS = 15_000
const AGAIN_MS = 20_000

type Asking<T> = { name: string; queryKey: readonly unknown[]; ask: (options: { signal: AbortSignal }) => Promise<T> }

/**
 * What the server answers, or else what it answered last, as kept on this device: `keptAt` says when, and is null where the answer is the server's own. A refusal (no
 * such record, not signed in) is an error all the same; a server that can't be reached is one only where nothing is kept. `asOf`, in ms, is a time before the server
 * answered: a command of this device may have been taken while the answer was on its way.
 */
export function useKept<T>({ name, queryKey, ask }: Asking<T>) {
  const { owner } = useField()
  const shelf = useQuery({
    queryKey: ['kept', owner, name],
    queryFn: () => keptAnswer<T>(owner, name).catch(() => null),
    networkMode: 'always',
    staleTime: 0,
    retry: false,
  })
  const live = useQuery({
    queryKey,
    queryFn: async ({ signal }) => {
      const answer = await ask({ signal: AbortSignal.any([signal, AbortSignal.timeout(PATIENCE_MS)]) })
      await keep(owner, name, answer).catch(() => {})
      return answer
    },
    // The browser may believe that it has a connection, or has none: the server is asked either way.
    networkMode: 'always',
    refetchOnReconnect: true,
    refetchInterval: (query) => (query.state.error ? AGAIN_MS : false),
    retry: false,
  })
  const away = live.error !== null && readFailure(live.error).code === 'unavailable'
  const kept = live.data === undefined && (live.error === null || away) ? shelf.data : null
  const data = live.data ?? kept?.answer
  return {
    data,
    keptAt: kept?.at ?? (away ? new Date(live.dataUpdatedAt).toISOString() : null),
    asOf: (live.data === undefined ? Date.parse(kept?.at ?? '') || 0 : live.dataUpdatedAt) - PATIENCE_MS,
    error: away && data !== undefined ? null : live.error,
    isPending: data === undefined && (live.isPending || shelf.isPending),
    isFetching: live.isFetching,
    refetch: live.refetch,
  }
}
