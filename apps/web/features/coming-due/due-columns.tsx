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
import { WhomLine } from '@/client/whom-line'
import { dueBedWords, dueThumb, plannedWhy } from './due-words.ts'
import { StillSoft } from './still-soft.tsx'

/** The same day so many years from a day; the end of February where there is none. */
const yearsFrom = (day: string, years: number) => `${Number(day.slice(0, 4)) + years}${day.slice(4)}`.replace('-02-29', '-02-28')

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

type Firm = Pick<Me, 'company'>

const thumbColumn = (firm: RebedFirm): Column<DueBed> => ({
  key: 'thumb',
  head: <span className="sr-only">Drawing</span>,
  cell: (bed) => <BedThumb thumb={dueThumb(bed, firm)} />,
  width: '44px',
  phone: 'hide',
})

const SITE: Column<DueBed> = {
  key: 'site',
  head: 'Site',
  phone: 'title',
  cell: (bed) => (
    <>
      <span className="font-semibold">{bed.siteLabel}</span>
      {bed.town ? <span className="block text-small text-soft">{bed.town}</span> : null}
    </>
  ),
}

/** Who is called about the bed, with the number. */
const CUSTOMER: Column<DueBed> = {
  key: 'customer',
  head: 'Customer',
  cell: ({ whom }) => (
    <>
      <WhomLine whom={whom} />
      {whom.customerName === null ? <span className="text-soft">nobody on record</span> : null}
      {whom.called?.mayCall === false ? <span className="block text-small text-soft">asked not to be called</span> : null}
    </>
  ),
}

/** The columns of the beds to call about: who, when it was due, how likely it has failed, and what they answered. */
export function callColumns(today: string, { company }: Firm, firm: RebedFirm): Column<DueBed>[] {
  const axis = { from: yearsFrom(today, -15), until: yearsFrom(today, 6), today }
  return [
    thumbColumn(firm),
    SITE,
    CUSTOMER,
    { key: 'bed', head: 'Bed', wideOnly: true, cell: (bed) => dueBedWords(bed, company) },
    {
      key: 'due',
      head: 'Due window',
      phoneHead: 'Due',
      width: '24%',
      cell: (bed) => <DueRibbon early={bed.due10Day} middle={bed.due50Day} late={bed.due90Day} axis={axis} dated />,
    },
    {
      key: 'already',
      head: 'Failed by now',
      align: 'right',
      cell: (bed) => <span className="font-semibold">{formatChance(bed.chanceAlreadyFailed, company)}</span>,
    },
    { key: 'soft', head: 'Is it still soft?', cell: (bed) => <StillSoft bed={bed} /> },
  ]
}

/** The columns of all beds that come due. */
export function dueColumns(today: string, { company }: Firm, firm: RebedFirm): Column<DueBed>[] {
  const axis = { from: yearsFrom(today, -1), until: yearsFrom(today, 10), today }
  return [
    thumbColumn(firm),
    SITE,
    CUSTOMER,
    { key: 'bed', head: 'Bed', sortable: true, cell: (bed) => dueBedWords(bed, company) },
    {
      key: 'due',
      head: 'Due window',
      phoneHead: 'Due',
      sortable: true,
      width: '21%',
      cell: (bed) => <DueRibbon early={bed.due10Day} middle={bed.due50Day} late={bed.due90Day} axis={axis} dated />,
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
      sortable: true,
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
