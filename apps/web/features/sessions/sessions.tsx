'use client'
import { Button } from '@almanac/ui/button'
import { PageHead } from '@almanac/ui/page-head'
import { Problem } from '@almanac/ui/problem'
import { Section } from '@almanac/ui/section'
import { Skeleton } from '@almanac/ui/skeleton'
import { useMutation, useQuery, useQueryClient } from '@tanstack/react-query'
import { deviceWords, sinceWords } from '@/client/device-words'
import { readFailure } from '@/client/failure'
import { useSession } from '@/client/providers'
import { useToday } from '@/client/use-today'
import { CalendarAddresses } from './calendar-addresses.tsx'
import { OwnEmail } from './own-email.tsx'
import { OwnPassword } from './own-password.tsx'
import { OwnWork } from './own-work.tsx'
import { SecondStepPart } from './second-step-part.tsx'

/** The person's open sessions; a lost tablet is signed out from here. */
export function Sessions() {
  const { api, me } = useSession()
  const today = useToday()
  const queries = useQueryClient()
  const sessions = useQuery(api.session.list.queryOptions())
  const end = useMutation(
    api.session.end.mutationOptions({ onSuccess: () => queries.invalidateQueries({ queryKey: api.session.list.key() }) }),
  )
  const failed = sessions.error ?? end.error
  return (
    <>
      <PageHead title="Your account" lead={`${me.person.name}, ${me.person.email}`} />
      {failed ? <Problem happened={readFailure(failed).message} onRetry={() => void sessions.refetch()} /> : null}
      {sessions.isPending ? <Skeleton /> : null}
      <Section title="Signed-in devices">
        <p className="mb-3 text-soft">A session you end here stops at once. Lost a tablet? End its session.</p>
        <ul>
          {sessions.data?.map((one) => (
            <li key={one.id} className="flex flex-wrap items-center justify-between gap-4 border-b border-line py-3">
              <span>
                {deviceWords(one.device)}
                <span className="block text-small text-soft">signed in {sinceWords(one.startedAt, today, me.company)}</span>
              </span>
              {one.present ? (
                <span className="text-soft">this one</span>
              ) : (
                <Button onClick={() => end.mutate({ sessionId: one.id })}>End session</Button>
              )}
            </li>
          ))}
        </ul>
      </Section>
      <OwnEmail />
      <OwnPassword />
      <SecondStepPart />
      <OwnWork />
      <CalendarAddresses />
    </>
  )
}
