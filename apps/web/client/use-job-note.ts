'use client'
import type { AskedByGuide, AskedFor } from '@almanac/records/asked-for'
import { useDisplay } from '@almanac/ui/display'
import { formatLengthIn } from '@almanac/units/format'
import { formatDay, formatDays } from '@almanac/units/format-day'
import { useWords } from '@almanac/words/use-words'

type Noted = { askedFor: AskedFor | null; notes: string | null }

/** What is noted of a job: how it was asked for, in the reader's language, then what somebody wrote; null where neither is. */
export function useJobNote(): (job: Noted) => string | null {
  const [display, words] = [useDisplay(), useWords('askedFor')]
  const [steps, stops] = [useWords('steps'), useWords('stop')]
  const byGuide = ({ step, stop, aroundIn, heightIn, photographs }: AskedByGuide) => [
    words('guide'),
    step && words('guideStep', { step: steps(step) }),
    stop && words('guideStop', { what: stops(`what/${stop}`) }),
    aroundIn && words('guideAround', { length: formatLengthIn(aroundIn, display) }),
    heightIn && words('guideHeight', { length: formatLengthIn(heightIn, display) }),
    photographs > 0 ? words('guidePhotographs', { count: photographs }) : null,
  ]
  const said = (asked: AskedFor): (string | null | 0)[] => {
    if (asked.by === 'link') return [words('link', { days: asked.days })]
    if (asked.by === 'kit') return [words(`kit/${asked.way}`)]
    if (asked.by === 'guide') return byGuide(asked)
    return [
      asked.quote ? words('quote') : null,
      asked.rebedDay && words('complaint', { day: formatDay(asked.rebedDay, display) }),
      asked.sees && words(`sees/${asked.sees}`),
      asked.hard && words('hard', { when: formatDays(asked.hard.earliest, asked.hard.latest, display) }),
    ]
  }
  return ({ askedFor, notes }) => [...(askedFor ? said(askedFor) : []), notes].filter(Boolean).join('. ') || null
}
