'use client'
import { addDays } from '@almanac/units/calendar/calendar-day'
import { useQuery } from '@tanstack/react-query'
import { asDone } from '@/client/field/as-done'
import { useField } from '@/client/field/field-home'
import { draftsOf } from '@/client/field/field-store'
import { TODAY } from '@/client/field/keep-work'
import { useKept } from '@/client/field/use-kept'
import { useSession } from '@/client/providers'
import { useToday } from '@/client/use-today'

/** The work of a technician by day, as the server says or as it is kept here: a list kept yesterday has today's visits among those to come. */
export function useWork() {
  const { api } = useSession()
  const { owner, outbox, lately } = useField()
  const clock = useToday()
  const page = useKept({
    name: TODAY,
    queryKey: api.visits.today.queryKey({ input: {} }),
    ask: (options) => api.visits.today.call({}, options),
  })
  const known = outbox && page.data ? [...page.data.visits, ...page.data.next].map((visit) => asDone(visit, outbox, lately, page.asOf)) : []
  // The day is the server's; only what was kept before today is read by this device's clock.
  const day = page.keptAt !== null && page.data && page.data.day < clock ? clock : (page.data?.day ?? clock)
  const tomorrow = addDays(day, 1)
  // A visit that was called off or given to another crew is on no list of theirs; what was typed for it here is found all the same.
  const drafts = useQuery({
    queryKey: ['drafts', owner],
    queryFn: () => draftsOf(owner).catch(() => []),
    networkMode: 'always',
    staleTime: 0,
  })
  const left = page.data ? (drafts.data ?? []).filter(({ visitId }) => !known.some((one) => one.visitId === visitId)) : []
  const today = known.filter((visit) => visit.day === day)
  return {
    ...page,
    ...{ day, left, mine: page.data?.mine ?? true },
    open: today.filter((visit) => visit.state !== 'closed'),
    closed: today.filter((visit) => visit.state === 'closed'),
    tomorrow: known.filter((visit) => visit.day === tomorrow),
    ahead: known.filter((visit) => visit.day > tomorrow).slice(0, 20),
  }
}
