'use client'
import { Button } from '@almanac/ui/button'
import { PageHead } from '@almanac/ui/page-head'
import { Problem } from '@almanac/ui/problem'
import { Section } from '@almanac/ui/section'
import { Skeleton } from '@almanac/ui/skeleton'
import { useWords } from '@almanac/words/use-words'
import { useMutation, useQuery, useQueryClient } from '@tanstack/react-query'
import { deviceWords, sinceWords } from '@/client/device-words'
import { readFailure } from '@/client/failure'
import { useSession } from '@/client/providers'
import { useToday } from '@/client/use-today'
import { CalendarAddresses } from './calendar-addresses.tsx'
import { OwnEmail } from './own-email.tsx'
import { OwnPassword } from './own-password.tsx'
import { OwnWork } from './own-work.tsx'
import { Passkeys } from './passkeys.tsx'
import { SecondStepPart } from './second-step-part.tsx'

/** The person's open sessions; a lost tablet is signed out from here. */
export function Sessions() {
  const { api, me } = useSession()
  const today = useToday()
  const words = useWords('ownAccount')
  const queries = useQueryClient()
  const sessions = useQuery(api.session.list.queryOptions())
  const end = useMutation(
    api.session.end.mutationOptions({ onSuccess: () => queries.invalidateQueries({ queryKey: api.session.list.key() }) }),
  )
  const failed = sessions.error ?? end.error
  return (
    <>
      <PageHead title={words('title')} lead={`${me.person.name}, ${me.person.email}`} />
      {failed ? <Problem happened={readFailure(failed).message} onRetry={() => void sessions.refetch()} /> : null}
      {sessions.isPending ? <Skeleton /> : null}
      <Section title={words('devices')}>
        <p className="mb-3 text-soft">{words('devicesLead')}</p>
        <ul>
          {sessions.data?.map((one) => (
            <li key={one.id} className="flex flex-wrap items-center justify-between gap-4 border-b border-line py-3">
              <span>
                {deviceWords(one.device, words)}
                <span className="block text-small text-soft">
                  {words('signedIn', { since: sinceWords(one.startedAt, today, me.company, words) })}
                </span>
              </span>
              {one.present ? (
                <span className="text-soft">{words('thisOne')}</span>
              ) : (
                <Button onClick={() => end.mutate({ sessionId: one.id })}>{words('endSession')}</Button>
              )}
            </li>
          ))}
        </ul>
      </Section>
      <OwnEmail />
      <OwnPassword />
      <SecondStepPart />
      <Passkeys />
      <OwnWork />
      <CalendarAddresses />
    </>
  )
}
