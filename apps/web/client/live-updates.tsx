'use client'
import type { ChangedEntity } from '@almanac/contract/changed-entity'
import { useWords } from '@almanac/words/use-words'
import { useQueryClient } from '@tanstack/react-query'
import { useEffect } from 'react'
import { sayUnreachable } from './failure.ts'
import { fetchChanged } from './fetch-changed.ts'
import { onceAccountStands } from './once-account-stands.ts'

/**
 * Keeps open screens fresh: what shows a record that changed somewhere in the company is fetched again, at most once in 300 ms, and nothing else. A stream that was
 * lost and comes again may have missed some: then all is. When access has ended, the page is loaded again and the sign-in page follows.
 */
export function LiveUpdates() {
  const queries = useQueryClient()
  const words = useWords('failure')
  useEffect(() => sayUnreachable(words('unreachable')), [words])
  useEffect(() => {
    let waiting: ReturnType<typeof setTimeout> | undefined
    const source = new EventSource('/api/live')
    const changed = new Set<ChangedEntity | 'everything'>()
    const look = (entity: ChangedEntity | 'everything') => {
      changed.add(entity)
      waiting ??= setTimeout(() => {
        waiting = undefined
        void fetchChanged(queries, [...changed])
        changed.clear()
      }, 300)
    }
    let lost = false
    source.onmessage = (message: MessageEvent<string>) =>
      look((JSON.parse(message.data) as { entity: ChangedEntity | 'everything' }).entity)
    source.onerror = () => {
      lost = true
    }
    source.onopen = () => {
      if (lost) look('everything')
      lost = false
    }
    source.addEventListener('ended', () => onceAccountStands(() => location.reload()))
    return () => {
      clearTimeout(waiting)
      source.close()
    }
  }, [queries])
  return null
}
