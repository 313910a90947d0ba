import type { WorkLine as Line } from '@almanac/contract/visits'
import { thumbOf } from '@almanac/softener/rebed/thumb-of-record'
import { BedThumb } from '@almanac/ui/bed-thumb'
import { JobStateWord } from '@almanac/ui/job-state-word'
import { formatClock } from '@almanac/units/format-clock'
import { useWords } from '@almanac/words/use-words'
import Link from 'next/link'
import { bedWords } from '@/client/bed-facts-words'
import { directionsTo } from '@/client/directions'
import { useSession } from '@/client/providers'
import { useRebedFirm } from '@/client/use-rebed-firm'

/** One visit as a large target: when, what, where, with whom. */
export function WorkListLine({ visit, showCrew, day }: { visit: Line; showCrew: boolean; day?: string }) {
  const firm = useRebedFirm()
  const { me } = useSession()
  const words = useWords('today')
  const kinds = useWords('jobKind')
  const display = me.company
  const place = [visit.street, visit.town].filter(Boolean).join(', ')
  const others = visit.people.filter((name) => name !== me.person.name)
  return (
    <li className="flex items-stretch border-b border-line">
      <Link href={`/visits/${visit.visitId}`} className="flex min-h-16 min-w-0 grow items-center gap-5 py-4 hover:bg-wash">
        <span className="w-20 shrink-0 font-semibold">
          {day ? <span className="block text-small font-normal text-soft">{day}</span> : null}
          {formatClock(visit.startsAt, display)}
          <span className="block text-small font-normal text-soft">{words('until', { until: formatClock(visit.endsAt, display) })}</span>
        </span>
        <span className="grow">
          <span className="font-semibold">
            {kinds(visit.kind)} · {visit.siteLabel}
          </span>
          <span className="block text-small text-soft">
            {place}
            {visit.bed ? ` · ${bedWords(visit.bed, display) ?? words('sizeUnknown')}` : ''}
          </span>
          <span className="block text-small text-soft">
            {showCrew ? visit.crewName : others.length > 0 ? words('withPeople', { people: others.join(', ') }) : words('alone')}
          </span>
          {visit.state === 'booked' ? null : <JobStateWord state={visit.state} />}
        </span>
        {visit.bed ? <BedThumb thumb={thumbOf(visit.bed, firm)} height={56} /> : null}
      </Link>
      {place ? (
        <a
          href={directionsTo(place)}
          aria-label={words('directionsTo', { site: visit.siteLabel })}
          className="flex min-w-16 shrink-0 items-center justify-center px-3 text-small underline underline-offset-4 hover:bg-wash"
        >
          {words('directions')}
        </a>
      ) : null}
    </li>
  )
}
