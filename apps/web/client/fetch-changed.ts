'use client'
import type { ChangedEntity } from '@almanac/contract/changed-entity'
import { CHANGES, type CommandName, queriesShowing } from '@almanac/contract/changes'
import { type QueryClient, useQueryClient } from '@tanstack/react-query'

/** Which procedure a key belongs to: [[company, domain, verb], …], as `apiFor` makes them. */
const nameOf = (key: readonly unknown[]) => (Array.isArray(key[0]) ? key[0].slice(1).join('.') : '')

/** Fetches again what shows any of these entities and is on the page; the rest is fetched again when it is shown next. */
export function fetchChanged(queries: QueryClient, changed: Iterable<ChangedEntity | 'everything'>): Promise<void> {
  const names: Set<string> = queriesShowing(changed)
  return queries.invalidateQueries({ predicate: ({ queryKey }) => names.has(nameOf(queryKey)) })
}

/** What a command changes by the contract; everything for a key that is no command's. */
export function changedBy(mutationKey: readonly unknown[] | undefined): readonly (ChangedEntity | 'everything')[] {
  return CHANGES[nameOf(mutationKey ?? []) as CommandName] ?? ['everything']
}

/** Fetches again what a command changed. */
export function useFetchChanged(): (command: CommandName) => Promise<void> {
  const queries = useQueryClient()
  return (command) => fetchChanged(queries, CHANGES[command])
}
