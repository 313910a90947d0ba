'use client'
import type { ChangedEntity } from '@almanac/contract/changed-entity'
import type { CommandName } from '@almanac/contract/changes'
import { type QueryClient, useQueryClient } from '@tanstack/react-query'

/** Which procedure a key belongs to: [[company, domain, verb], …], as `apiFor` makes them. */
const nameOf = (key: readonly unknown[]) => (Array.isArray(key[0]) ? key[0].slice(1).join('.') : '')

/** What shows and changes what: no page needs it for its first picture. Where it does not come, as after a release, everything is fetched again. */
const contractChanges = () => import('@almanac/contract/changes').catch(() => null)

/** Fetches again what shows any of these entities and is on the page; the rest is fetched again when it is shown next. */
export async function fetchChanged(queries: QueryClient, changed: Iterable<ChangedEntity | 'everything'>): Promise<void> {
  const known = await contractChanges()
  if (!known) return queries.invalidateQueries()
  const names: Set<string> = known.queriesShowing(changed)
  return queries.invalidateQueries({ predicate: ({ queryKey }) => names.has(nameOf(queryKey)) })
}

/** What a command changes by the contract; everything for a key that is no command's. */
export async function changedBy(mutationKey: readonly unknown[] | undefined): Promise<readonly (ChangedEntity | 'everything')[]> {
  return (await contractChanges())?.CHANGES[nameOf(mutationKey ?? []) as CommandName] ?? ['everything']
}

/** Fetches again what a command changed. */
export function useFetchChanged(): (command: CommandName) => Promise<void> {
  const queries = useQueryClient()
  return async (command) => fetchChanged(queries, (await contractChanges())?.CHANGES[command] ?? ['everything'])
}
