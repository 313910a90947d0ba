import type { RoundTurn } from '@almanac/contract/agreements'
import { agreementKindWords } from '@almanac/records/agreement'
import type { Column } from '@almanac/ui/data-table'
import { JobStateWord } from '@almanac/ui/job-state-word'
import { StatusWord } from '@almanac/ui/status-word'
import { TextLink } from '@almanac/ui/text-link'
import { formatDay } from '@almanac/units/format-day'
import Link from 'next/link'
import { everyWords } from '@/client/agreements/agreement-words'

export const turnKey = ({ agreementId, dueDay }: { agreementId: string; dueDay: string }) => `${agreementId} ${dueDay}`

function State({ turn }: { turn: RoundTurn }) {
  if (turn.standing === 'done')
    return (
      <StatusWord shape="tick" tone="done">
        done
      </StatusWord>
    )
  if (turn.job)
    return (
      <TextLink href={`/jobs/${turn.job.id}`} link={Link}>
        <JobStateWord state={turn.job.state} />
      </TextLink>
    )
  if (!turn.fits)
    return (
      <StatusWord shape="triangle" tone="danger">
        crews are full
      </StatusWord>
    )
  return (
    <StatusWord shape="dashed" tone="soft">
      to approve
    </StatusWord>
  )
}

/** What a list of turns says of each. */
export const turnColumns = (display: { locale: string }): Column<RoundTurn>[] => [
  {
    key: 'site',
    head: 'Site',
    phone: 'title',
    cell: (turn) => (
      <>
        <span className="font-semibold">{turn.siteLabel}</span>
        <span className="block text-small text-soft">{[turn.town, turn.customerName].filter(Boolean).join(' · ')}</span>
      </>
    ),
  },
  {
    key: 'what',
    head: 'What',
    cell: (turn) => (
      <>
        {agreementKindWords[turn.kind]}
        <span className="block text-small text-soft">{[everyWords(turn.every), turn.softenerLabel].filter(Boolean).join(', ')}</span>
      </>
    ),
  },
  { key: 'due', head: 'Due', cell: (turn) => formatDay(turn.dueDay, display) },
  { key: 'state', head: 'State', cell: (turn) => <State turn={turn} /> },
]
