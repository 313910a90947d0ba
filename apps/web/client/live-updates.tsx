'use client'
import { useQueryClient } from '@tanstack/react-query'
import { useEffect } from 'react'

/**
 * Keeps open screens fresh: on a change anywhere in the company, what is shown is fetched again, at most once in 300 ms. When access has
 * ended, the page is loaded again and the sign-in page follows.
 */
export function LiveUpdates() {
  const queries = useQueryClient()
  useEffect(() => {
    let waiting: ReturnType<typeof setTimeout> | undefined
    const source = new EventSource('/api/live')
    source.onmessage = () => {
      waiting ??= setTimeout(() => {
        waiting = undefined
        void queries.invalidateQueries()
      }, 300)
    }
    source.addEventListener('ended', () => location.reload())
    return () => {
      clearTimeout(waiting)
      source.close()
    }
  }, [queries])
  return null
}
