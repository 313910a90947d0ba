'use client'
import { asDone } from '@/client/field/as-done'
import { useField } from '@/client/field/field-home'
import { visitName } from '@/client/field/keep-work'
import { useKept } from '@/client/field/use-kept'
import { useSession } from '@/client/providers'

/** One visit, as the server says or as it is kept here, with what was done on this device already. */
export function useVisit(visitId: string) {
  const { api } = useSession()
  const { outbox, lately } = useField()
  const input = { visitId }
  const page = useKept({
    name: visitName(visitId),
    queryKey: api.visits.get.queryKey({ input }),
    ask: (options) => api.visits.get.call(input, options),
  })
  const visit = page.data && outbox ? asDone(page.data, outbox, lately, page.asOf) : undefined
  return { ...page, visit, saidState: page.data?.state }
}
