import type { SiteRow } from '@almanac/contract/sites'
import { jobKindWords } from '@almanac/records/job-kind'
import type { RebedFirm } from '@almanac/softener/rebed/rebed-of-record'
import { BedThumb } from '@almanac/ui/bed-thumb'
import type { Column } from '@almanac/ui/data-table'
import { DueAxisHead, DueRibbon } from '@almanac/ui/due-ribbon'
import { JobStateWord } from '@almanac/ui/job-state-word'
import { formatDay, formatMonth } from '@almanac/units/format-day'
import { ribbonAxis, thumbOfTank } from '@/client/bed-facts-words'
import { useBedTexts } from '@/client/use-bed-texts'

/** The columns of the list of sites. */
export function siteColumns(today: string, firm: RebedFirm): Column<SiteRow>[] {
  const axis = ribbonAxis(today)
  const { display } = firm
  return [
    {
      key: 'thumb',
      head: <span className="sr-only">Drawing</span>,
      cell: ({ tanks: [tank], beds: [bed] }) => <BedThumb thumb={tank ? thumbOfTank(tank, bed, firm) : null} />,
      width: '44px',
      phone: 'hide',
    },
    {
      key: 'site',
      head: 'Site',
      phone: 'title',
      width: '20%',
      cell: (site) => (
        <>
          {site.label}
          {site.town ? <span className="block text-small font-normal text-soft">{site.town}</span> : null}
        </>
      ),
    },
    {
      key: 'customer',
      head: 'Customer',
      width: '15%',
      cell: (site) => site.customerName ?? <span className="text-soft italic">no customer now</span>,
    },
    {
      key: 'bed',
      head: 'Tank and bed',
      width: '21%',
      cell: (site) => <TanksAndBed site={site} />,
    },
    {
      key: 'due',
      head: <DueAxisHead axis={axis} most={5} />,
      phoneHead: 'Due',
      width: '22%',
      cell: ({ beds: [bed] }) =>
        bed?.due10Day && bed.due50Day ? (
          <span className="block w-full">
            <DueRibbon early={bed.due10Day} middle={bed.due50Day} late={bed.due90Day} axis={axis} />
          </span>
        ) : (
          <span className="text-small text-soft">no due date yet</span>
        ),
    },
    {
      key: 'month',
      head: 'Due about',
      width: '6.5rem',
      cell: ({ beds: [bed] }) =>
        bed?.due50Day ? (
          <span className={bed.due50Day < today ? 'font-semibold' : ''}>
            {formatMonth(bed.due50Day, display)}
            {bed.due50Day < today ? <span className="block text-small font-normal text-soft">past</span> : null}
          </span>
        ) : null,
      phone: 'hide',
    },
    {
      key: 'job',
      head: 'Next job',
      width: '9.5rem',
      cell: ({ nextJob }) =>
        nextJob ? (
          <span>
            {jobKindWords[nextJob.kind]}
            <span className="block text-small">
              <JobStateWord state={nextJob.state} />
              {nextJob.visitDay ? <span className="text-soft"> {formatDay(nextJob.visitDay, display)}</span> : null}
            </span>
          </span>
        ) : (
          <span className="text-soft">none</span>
        ),
    },
  ]
}

function TanksAndBed({ site }: { site: SiteRow }) {
  const texts = useBedTexts()
  const [tank] = site.tanks
  const [bed] = site.beds
  if (!tank) return <span className="text-soft italic">no softener entered</span>
  const sizes = [...new Set(site.tanks.map((one) => texts.tank(one)))]
  const many = site.tanks.length > 1 ? `${site.tanks.length} tanks: ` : ''
  const began = bed ? texts.began(bed) : null
  return (
    <span>
      {many}
      {sizes.join(' and ')}
      <span className="block text-small text-soft">
        {bed ? [texts.resin(bed), began ? `installed ${began}` : 'age not known'].filter(Boolean).join(', ') : 'no bed in service'}
      </span>
    </span>
  )
}
