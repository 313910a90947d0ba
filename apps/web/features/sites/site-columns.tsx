import type { SiteRow } from '@almanac/contract/sites'
import type { RebedFirm } from '@almanac/softener/rebed/rebed-of-record'
import { BedThumb } from '@almanac/ui/bed-thumb'
import type { Column } from '@almanac/ui/data-table'
import { DueAxisHead, DueRibbon } from '@almanac/ui/due-ribbon'
import { JobStateWord } from '@almanac/ui/job-state-word'
import { formatDay, formatMonth } from '@almanac/units/format-day'
import { useWords } from '@almanac/words/use-words'
import type { Words } from '@almanac/words/words'
import { ribbonAxis, thumbOfTank } from '@/client/bed-facts-words'
import { useBedTexts } from '@/client/use-bed-texts'

export type SiteSpeaking = { words: Words<'sites'>; kinds: Words<'jobKind'> }

/** The columns of the list of sites. */
export function siteColumns(today: string, firm: RebedFirm, { words, kinds }: SiteSpeaking): Column<SiteRow>[] {
  const axis = ribbonAxis(today)
  const { display } = firm
  return [
    {
      key: 'thumb',
      head: <span className="sr-only">{words('drawing')}</span>,
      cell: ({ tanks: [tank], beds: [bed] }) => <BedThumb thumb={tank ? thumbOfTank(tank, bed, firm) : null} />,
      width: '44px',
      phone: 'hide',
    },
    {
      key: 'site',
      head: words('site'),
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
      head: words('customer'),
      width: '15%',
      cell: (site) => site.customerName ?? <span className="text-soft italic">{words('noCustomer')}</span>,
    },
    {
      key: 'bed',
      head: words('tankAndBed'),
      width: '21%',
      cell: (site) => <TanksAndBed site={site} />,
    },
    {
      key: 'due',
      head: <DueAxisHead axis={axis} most={5} />,
      phoneHead: words('due'),
      width: '22%',
      cell: ({ beds: [bed] }) =>
        bed?.due10Day && bed.due50Day ? (
          <span className="block w-full">
            <DueRibbon early={bed.due10Day} middle={bed.due50Day} late={bed.due90Day} axis={axis} />
          </span>
        ) : (
          <span className="text-small text-soft">{words('noDueDate')}</span>
        ),
    },
    {
      key: 'month',
      head: words('dueAbout'),
      width: '6.5rem',
      cell: ({ beds: [bed] }) =>
        bed?.due50Day ? (
          <span className={bed.due50Day < today ? 'font-semibold' : ''}>
            {formatMonth(bed.due50Day, display)}
            {bed.due50Day < today ? <span className="block text-small font-normal text-soft">{words('past')}</span> : null}
          </span>
        ) : null,
      phone: 'hide',
    },
    {
      key: 'job',
      head: words('nextJob'),
      width: '9.5rem',
      cell: ({ nextJob }) =>
        nextJob ? (
          <span>
            {kinds(nextJob.kind)}
            <span className="block text-small">
              <JobStateWord state={nextJob.state} />
              {nextJob.visitDay ? <span className="text-soft"> {formatDay(nextJob.visitDay, display)}</span> : null}
            </span>
          </span>
        ) : (
          <span className="text-soft">{words('noJob')}</span>
        ),
    },
  ]
}

function TanksAndBed({ site }: { site: SiteRow }) {
  const texts = useBedTexts()
  const words = useWords('sites')
  const [tank] = site.tanks
  const [bed] = site.beds
  if (!tank) return <span className="text-soft italic">{words('noSoftener')}</span>
  const sizes = [...new Set(site.tanks.map((one) => texts.tank(one)))]
  const [first = '', ...others] = sizes
  const named = others.reduce((before, second) => words('and', { first: before, second }), first)
  const began = bed ? texts.began(bed) : null
  return (
    <span>
      {site.tanks.length > 1 ? words('tanks', { count: String(site.tanks.length), sizes: named }) : named}
      <span className="block text-small text-soft">
        {bed
          ? [texts.resin(bed), began ? words('installed', { when: began }) : words('ageUnknown')].filter(Boolean).join(', ')
          : words('noBed')}
      </span>
    </span>
  )
}
