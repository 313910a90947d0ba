import type { DueBed } from '@almanac/contract/due'
import type { Me } from '@almanac/contract/session'
import type { RebedFirm } from '@almanac/softener/rebed/rebed-of-record'
import { BedThumb } from '@almanac/ui/bed-thumb'
import type { Column } from '@almanac/ui/data-table'
import { useDisplay } from '@almanac/ui/display'
import { DueRibbon } from '@almanac/ui/due-ribbon'
import { JobStateWord } from '@almanac/ui/job-state-word'
import { formatLongMonth } from '@almanac/units/format-day'
import { formatChance } from '@almanac/units/format-number'
import { driverWords, dueBedWords, dueThumb, plannedWhy } from './due-words.ts'

/** The axis all ribbons of the list share: a year back, ten ahead. */
function axisFrom(today: string) {
  const year = Number(today.slice(0, 4))
  return {
    from: `${year - 1}${today.slice(4)}`.replace('-02-29', '-02-28'),
    until: `${year + 10}${today.slice(4)}`.replace('-02-29', '-02-28'),
    today,
  }
}

/** Chance that it failed unnoticed since anybody last saw it; said aloud where it is likelier than not. */
function AlreadyWords({ chance }: { chance: number }) {
  const display = useDisplay()
  if (chance < 0.05) return <span className="text-soft">unlikely</span>
  return chance > 0.5 ? (
    <>
      <span className="font-semibold text-danger">probably</span>
      <span className="block text-small text-soft">{formatChance(chance, display)}</span>
    </>
  ) : (
    <span>{formatChance(chance, display)}</span>
  )
}

/** The columns of the list of beds coming due. */
export function dueColumns(today: string, { company }: Pick<Me, 'company'>, firm: RebedFirm): Column<DueBed>[] {
  const axis = axisFrom(today)
  return [
    {
      key: 'thumb',
      head: <span className="sr-only">Drawing</span>,
      cell: (bed) => <BedThumb thumb={dueThumb(bed, firm)} />,
      width: '44px',
      phone: 'hide',
    },
    {
      key: 'site',
      head: 'Site',
      phone: 'title',
      cell: (bed) => (
        <>
          <span className="font-semibold">{bed.siteLabel}</span>
          {bed.town ? <span className="block text-small text-soft">{bed.town}</span> : null}
        </>
      ),
    },
    { key: 'bed', head: 'Bed', sortable: true, cell: (bed) => dueBedWords(bed, company) },
    {
      key: 'drivers',
      head: 'What drives it',
      wideOnly: true,
      cell: (bed) => <span className="text-small text-soft">{driverWords(bed)}</span>,
      width: '19%',
    },
    {
      key: 'due',
      head: 'Due window',
      phoneHead: 'Due',
      sortable: true,
      width: '21%',
      cell: (bed) => <DueRibbon early={bed.due10Day} middle={bed.due50Day} late={bed.due90Day} axis={axis} />,
    },
    {
      key: 'chance',
      head: 'Chance of failing in 12 months',
      align: 'right',
      sortable: true,
      cell: (bed) => (
        <>
          <span className="font-semibold">{formatChance(bed.chance12Months, company)}</span>
          <span className="block text-small text-soft">if it works today</span>
        </>
      ),
    },
    {
      key: 'already',
      head: 'Failed already?',
      align: 'right',
      cell: (bed) => <AlreadyWords chance={bed.chanceAlreadyFailed} />,
    },
    {
      key: 'planned',
      head: 'Planned',
      cell: (bed) =>
        bed.planned ? (
          <>
            {formatLongMonth(bed.planned.month, company)}
            <span className="block text-small text-soft">{plannedWhy(bed.planned, company)}</span>
          </>
        ) : null,
    },
    { key: 'job', head: 'Job', cell: (bed) => (bed.job ? <JobStateWord state={bed.job.state} /> : null) },
  ]
}
