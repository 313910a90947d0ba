'use client'
import { Button } from '@almanac/ui/button'
import { type HistoryKind, HistoryLine } from '@almanac/ui/history-line'
import { Problem } from '@almanac/ui/problem'
import { Skeleton } from '@almanac/ui/skeleton'
import { TextLink } from '@almanac/ui/text-link'
import { useQuery } from '@tanstack/react-query'
import Link from 'next/link'
import { useState } from 'react'
import { readFailure } from '@/client/failure'
import { useSession } from '@/client/providers'
import { useBedTexts } from '@/client/use-bed-texts'
import { describeEvent } from './happening-words.ts'

const KINDS: Record<HistoryKind, string> = {
  bed: 'bed',
  visit: 'visit',
  test: 'water test',
  water: 'water supply',
  message: 'message',
  note: 'note',
}

/** How many are shown at first: about a screen. */
const AT_FIRST = 20

/** Everything dated that happened at the site, newest first, on one line. */
export function SiteHistory({ siteId }: { siteId: string }) {
  const { api, me } = useSession()
  const texts = useBedTexts()
  const [all, setAll] = useState(false)
  const history = useQuery(api.sites.history.queryOptions({ input: { siteId } }))
  if (history.error)
    return <Problem happened={readFailure(history.error).message} onRetry={() => void history.refetch()} retrying={history.isFetching} />
  if (!history.data) return <Skeleton lines={6} label="Loading the history" />
  const { happenings, more } = history.data
  if (happenings.length === 0)
    return <p className="text-soft">Nothing dated yet. Visits, water tests and beds appear here as they are recorded.</p>
  const shown = all ? happenings : happenings.slice(0, AT_FIRST)
  return (
    <>
      <HistoryLine
        entries={shown.map((one) => {
          const { kind, title, detail, dayWords, href } = describeEvent(one, me.company, texts)
          return {
            key: one.key,
            day: one.day,
            dayWords,
            kind,
            kindWord: KINDS[kind],
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
      {!all && happenings.length > AT_FIRST ? <Button onClick={() => setAll(true)}>Show all {happenings.length}</Button> : null}
      {all && more ? <p className="text-small text-soft">Older entries are left out.</p> : null}
    </>
  )
}
