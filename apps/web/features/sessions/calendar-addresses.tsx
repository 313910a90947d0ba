'use client'
import { Button } from '@almanac/ui/button'
import { Problem } from '@almanac/ui/problem'
import { Section } from '@almanac/ui/section'
import { TextInput } from '@almanac/ui/text-input'
import { dayIn } from '@almanac/units/calendar/zone-clock'
import { formatDay } from '@almanac/units/format-day'
import { useWords } from '@almanac/words/use-words'
import { useQuery } from '@tanstack/react-query'
import type { ReactNode } from 'react'
import { readFailure } from '@/client/failure'
import { usePermission, useSession } from '@/client/providers'
import { useCommand } from '@/client/use-command'

/**
 * Addresses at which a person's own calendar program finds their visits, and the office's finds all day sheets; each can be ended. Nothing for someone on no
 * sheets and not in the office.
 */
export function CalendarAddresses() {
  const { api } = useSession()
  const words = useWords('ownAccount')
  const office = usePermission('book:visit')
  const feeds = useQuery(api.windows.feeds.queryOptions())
  const begin = useCommand(api.windows.beginFeed.mutationOptions())
  const beginOffice = useCommand(api.windows.beginOfficeFeed.mutationOptions())
  const failure = feeds.error ?? begin.error ?? beginOffice.error
  return (
    <>
      {failure ? <Problem happened={readFailure(failure).message} onRetry={() => void feeds.refetch()} /> : null}
      {feeds.data?.onSheets ? (
        <Part of="own" title={words('ownCalendar')} busy={begin.isPending} onBegin={() => begin.send({})}>
          {words('ownCalendarLead')}
        </Part>
      ) : null}
      {office ? (
        <Part of="office" title={words('officeCalendar')} busy={beginOffice.isPending} onBegin={() => beginOffice.send({})}>
          {words('officeCalendarLead')}
        </Part>
      ) : null}
    </>
  )
}

type PartProps = { of: 'own' | 'office'; title: string; busy: boolean; onBegin: () => void; children: ReactNode }

function Part({ of, title, busy, onBegin, children }: PartProps) {
  const { api, me } = useSession()
  const words = useWords('ownAccount')
  const feeds = useQuery(api.windows.feeds.queryOptions())
  const end = useCommand(api.windows.endFeed.mutationOptions())
  const own = feeds.data?.feeds.filter((feed) => feed.of === of) ?? []
  return (
    <Section
      title={title}
      actions={
        <Button busy={busy} aria-label={of === 'office' ? words('makeOfficeAddress') : undefined} onClick={onBegin}>
          {words('makeAddress')}
        </Button>
      }
    >
      {end.error ? <Problem happened={readFailure(end.error).message} /> : null}
      <p className="mb-3 max-w-[75ch] text-soft">{children}</p>
      {own.map((feed) => (
        <div key={feed.id} className="flex flex-wrap items-end gap-3 border-t border-line py-3">
          <div className="min-w-0 grow basis-60">
            <TextInput
              label={words('addressMade', { day: formatDay(dayIn(me.company.timeZone, feed.createdAt), me.company) })}
              readOnly
              value={`${location.origin}${feed.path}`}
              onFocus={(event) => event.target.select()}
            />
          </div>
          <Button busy={end.isPending} onClick={() => end.send({ feedId: feed.id, version: feed.version })}>
            {words('endAddress')}
          </Button>
        </div>
      ))}
    </Section>
  )
}
