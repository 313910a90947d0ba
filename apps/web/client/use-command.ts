'use client'
import { type UseMutationOptions, useMutation, useQueryClient } from '@tanstack/react-query'
import { useRef } from 'react'
import { v7 } from 'uuid'
import { changedBy, fetchChanged } from './fetch-changed.ts'

type Options<I, O> = Pick<UseMutationOptions<O, Error, I>, 'mutationFn' | 'mutationKey'>
type Hooks<O> = { onDone?: (answer: O) => void }

/**
 * Sends a command. It gives each new body its own command id and keeps the id while the same body is sent again after a failure, so that
 * a lost answer never applies twice. Afterwards what it changed is fetched again.
 */
export function useCommand<I extends { commandId: string }, O>(options: Options<I, O>, hooks: Hooks<O> = {}) {
  const queries = useQueryClient()
  const last = useRef<{ body: string; id: string } | null>(null)
  const mutation = useMutation<O, Error, I>({
    mutationKey: options.mutationKey,
    mutationFn: options.mutationFn,
    onSuccess: async (answer) => {
      last.current = null
      hooks.onDone?.(answer)
      await fetchChanged(queries, await changedBy(options.mutationKey))
    },
  })
  const send = (body: Omit<I, 'commandId'>) => {
    const text = JSON.stringify(body)
    if (last.current?.body !== text) last.current = { body: text, id: v7() }
    mutation.mutate({ ...body, commandId: last.current.id } as I)
  }
  return { ...mutation, send }
}
