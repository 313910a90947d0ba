'use client'
import type { AskedFor } from '@almanac/records/asked-for'
import { useDisplay } from '@almanac/ui/display'
import { formatDay, formatDays } from '@almanac/units/format-day'
import { useWords } from '@almanac/words/use-words'

type Noted = { askedFor: AskedFor | null; notes: string | null }

/** What is noted of a job: how it was asked for, in the reader's language, then what somebody wrote; null where neither is. */
export function useJobNote(): (job: Noted) => string | null {
  const [display, words] = [useDisplay(), useWords('askedFor')]
  const said = (asked: AskedFor): (string | null)[] =>
    asked.by === 'link'
      ? [words('link', { days: asked.days })]
      : [
          asked.quote ? words('quote') : null,
          asked.rebedDay && words('complaint', { day: formatDay(asked.rebedDay, display) }),
          asked.sees && words(`sees/${asked.sees}`),
          asked.hard && words('hard', { when: formatDays(asked.hard.earliest, asked.hard.latest, display) }),
        ]
  return ({ askedFor, notes }) => [...(askedFor ? said(askedFor) : []), notes].filter(Boolean).join('. ') || null
}
