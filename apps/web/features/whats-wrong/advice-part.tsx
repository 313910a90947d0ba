import type { Advice } from '@almanac/softener/diagnosis/advice'
import { Caution } from '@almanac/ui/caution'
import { LinkButton } from '@almanac/ui/link-button'
import { StatusWord } from '@almanac/ui/status-word'
import { Why } from '@almanac/ui/why'
import { formatPercent, type NumberDisplay, withUnit } from '@almanac/units/format-number'
import Link from 'next/link'
import { useSession } from '@/client/providers'

const URGENCY = {
  now: { shape: 'tick', tone: 'done', words: 'we know enough to do it' },
  'check-first': { shape: 'half', tone: 'bead', words: 'one more check first' },
  today: { shape: 'triangle', tone: 'danger', words: 'today' },
} as const

const hours = (value: number, display: NumberDisplay) => withUnit(value, 1, 'h', display)

/** What to do as things stand, how sure that is, and the way to a job where the bed is known. */
export function AdvicePart({ advice, proposeHref }: { advice: Advice; proposeHref: string | null }) {
  const display = useSession().me.company
  const urgency = URGENCY[advice.urgency]
  return (
    <div>
      <p className="flex flex-wrap items-baseline gap-x-4">
        <strong className="text-h2 font-semibold">{advice.label}</strong>
        <StatusWord shape={urgency.shape} tone={urgency.tone}>
          {urgency.words}
        </StatusWord>
      </p>
      {advice.sentences.map((sentence) => (
        <p key={sentence} className="mt-1">
          {sentence}
        </p>
      ))}
      <p className="mt-1 text-soft">
        Fixes{' '}
        <Why
          explanation={{
            title: 'Why this advice',
            summary: 'We suggest what should take the fewest hours in the end, counting a second trip if it doesn’t fix the cause.',
            inputs: [
              { name: advice.label, value: hours(advice.expectedHours, display) },
              ...(advice.nextBest
                ? [{ name: `Next best: ${advice.nextBest.label.toLowerCase()}`, value: hours(advice.nextBest.expectedHours, display) }]
                : []),
            ],
            formula:
              'The hours of each action: its own, plus the return visit and the right fix where it doesn’t cure the cause. Another check comes first while it saves more hours on average than it takes; each bit of doubt it removes counts as half an hour.',
            assumptions: ['Hours are one person’s, parts included. Use them only to compare.'],
            source: 'common practice, no source',
          }}
        >
          {formatPercent(advice.mends, display)} of such cases
        </Why>
        .
      </p>
      {advice.cautions.map((caution) => (
        <Caution key={caution.text} kind={caution.kind}>
          {caution.text}
        </Caution>
      ))}
      {proposeHref && advice.jobKind && advice.urgency !== 'today' ? (
        <p className="mt-3">
          <LinkButton href={proposeHref} kind={advice.urgency === 'now' ? 'ink' : 'line'} link={Link}>
            Add a job
          </LinkButton>
        </p>
      ) : null}
    </div>
  )
}
