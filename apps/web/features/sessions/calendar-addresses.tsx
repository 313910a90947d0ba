'use client'
import { Button } from '@almanac/ui/button'
import { Problem } from '@almanac/ui/problem'
import { Section } from '@almanac/ui/section'
import { TextInput } from '@almanac/ui/text-input'
import { dayIn } from '@almanac/units/calendar/zone-clock'
import { formatDay } from '@almanac/units/format-day'
import { useQuery } from '@tanstack/react-query'
import { readFailure } from '@/client/failure'
import { useSession } from '@/client/providers'
import { useCommand } from '@/client/use-command'

/** Addresses at which the person's own calendar program finds their visits; each can be ended. Nothing for someone on no sheets. */
export function CalendarAddresses() {
  const { api, me } = useSession()
  const feeds = useQuery(api.windows.feeds.queryOptions())
  const begin = useCommand(api.windows.beginFeed.mutationOptions())
  const end = useCommand(api.windows.endFeed.mutationOptions())
  const failure = feeds.error ?? begin.error ?? end.error
  if (!feeds.data?.onSheets && !failure) return null
  return (
    <Section
      title="Your visits in your own calendar"
      actions={
        <Button busy={begin.isPending} onClick={() => begin.send({})}>
          Make an address
        </Button>
      }
    >
      {failure ? <Problem happened={readFailure(failure).message} onRetry={() => void feeds.refetch()} /> : null}
      <p className="mb-3 text-soft">
        Subscribe to the address in your phone’s calendar. It shows your visits and keeps up with changes. Anyone with the address can read
        it, so end it if a phone is lost.
      </p>
      {feeds.data?.feeds.map((feed) => (
        <div key={feed.id} className="flex flex-wrap items-end gap-3 border-t border-line py-3">
          <div className="min-w-0 grow basis-60">
            <TextInput
              label={`Address made ${formatDay(dayIn(me.company.timeZone, feed.createdAt), me.company)}`}
              readOnly
              value={`${location.origin}${feed.path}`}
              onFocus={(event) => event.target.select()}
            />
          </div>
          <Button busy={end.isPending} onClick={() => end.send({ feedId: feed.id, version: feed.version })}>
            End this address
          </Button>
        </div>
      ))}
    </Section>
  )
}
