import type { Advice } from '@almanac/softener/diagnosis/advice'
import { LinkButton } from '@almanac/ui/link-button'
import { StatusWord } from '@almanac/ui/status-word'
import { Why } from '@almanac/ui/why'
import { formatPercent, showNumber } from '@almanac/units/format-number'
import { useWords } from '@almanac/words/use-words'
import Link from 'next/link'
import { useSession } from '@/client/providers'
import { CheckCautions } from './check-cautions.tsx'

const URGENCY = {
  now: { shape: 'tick', tone: 'done' },
  'check-first': { shape: 'half', tone: 'bead' },
  today: { shape: 'triangle', tone: 'danger' },
} as const

/** What to do as things stand, how sure that is, and the way to a job where the bed is known. */
export function AdvicePart({ advice, proposeHref }: { advice: Advice; proposeHref: string | null }) {
  const display = useSession().me.company
  const words = useWords('whatsWrong')
  const said = useWords('diagnosis')
  const urgency = URGENCY[advice.urgency]
  const label = said(`action/${advice.action}`)
  const hours = (value: number) => words('hours', { value: showNumber(value, 1, display) ?? '' })
  const { nextBest } = advice
  return (
    <div>
      <p className="flex flex-wrap items-baseline gap-x-4">
        <strong className="text-h2 font-semibold">{label}</strong>
        <StatusWord shape={urgency.shape} tone={urgency.tone}>
          {words(`urgency/${advice.urgency}`)}
        </StatusWord>
      </p>
      {advice.sentences.map((sentence) => (
        <p key={sentence} className="mt-1">
          {sentence}
        </p>
      ))}
      <p className="mt-1 text-soft">
        {words.rich('fixes', {
          share: formatPercent(advice.mends, display),
          why: (share) => (
            <Why
              explanation={{
                title: words('whyAdvice'),
                summary: words('fewestHours'),
                inputs: [
                  { name: label, value: hours(advice.expectedHours) },
                  ...(nextBest
                    ? [
                        {
                          name: words('nextBest', { action: said(`action/${nextBest.action}`).toLowerCase() }),
                          value: hours(nextBest.expectedHours),
                        },
                      ]
                    : []),
                ],
                formula: words('hoursOf'),
                assumptions: [words('onePerson')],
                source: said('practice'),
              }}
            >
              {share}
            </Why>
          ),
        })}
      </p>
      <CheckCautions cautions={advice.cautions} />
      {proposeHref && advice.jobKind && advice.urgency !== 'today' ? (
        <p className="mt-3">
          <LinkButton href={proposeHref} kind={advice.urgency === 'now' ? 'ink' : 'line'} link={Link}>
            {words('addJob')}
          </LinkButton>
        </p>
      ) : null}
    </div>
  )
}
