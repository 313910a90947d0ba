'use client'
import { Button } from '@almanac/ui/button'
import { HistoryLine } from '@almanac/ui/history-line'
import { Problem } from '@almanac/ui/problem'
import { Skeleton } from '@almanac/ui/skeleton'
import { TextLink } from '@almanac/ui/text-link'
import { useQuery } from '@tanstack/react-query'
import Link from 'next/link'
import { useState } from 'react'
import { readFailure } from '@/client/failure'
import { useSession } from '@/client/providers'
import { describeEvent } from './happening-words.ts'
import { useEventSpeaking } from './use-event-speaking.ts'

/** How many are shown at first: about a screen. */
const AT_FIRST = 20

/** Everything dated that happened at the site, newest first, on one line. */
export function SiteHistory({ siteId }: { siteId: string }) {
  const { api } = useSession()
  const speaking = useEventSpeaking()
  const { words } = speaking
  const [all, setAll] = useState(false)
  const history = useQuery(api.sites.history.queryOptions({ input: { siteId } }))
  if (history.error)
    return <Problem happened={readFailure(history.error).message} onRetry={() => void history.refetch()} retrying={history.isFetching} />
  if (!history.data) return <Skeleton lines={6} label={words('loading')} />
  const { happenings, more } = history.data
  if (happenings.length === 0) return <p className="text-soft">{words('none')}</p>
  const shown = all ? happenings : happenings.slice(0, AT_FIRST)
  return (
    <>
      <HistoryLine
        entries={shown.map((one) => {
          const { kind, title, detail, dayWords, href } = describeEvent(one, speaking)
          return {
            key: one.key,
            day: one.day,
            dayWords,
            kind,
            kindWord: words(`kind/${kind}`),
            title: href ? (
              <TextLink href={href} link={Link}>
                {title}
              </TextLink>
            ) : (
              title
            ),
            children: detail,
          }
        })}
      />
      {!all && happenings.length > AT_FIRST ? (
        <Button onClick={() => setAll(true)}>{words('showAll', { count: String(happenings.length) })}</Button>
      ) : null}
      {all && more ? <p className="text-small text-soft">{words('leftOut')}</p> : null}
    </>
  )
}
