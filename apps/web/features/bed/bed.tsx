'use client'
import { Button } from '@almanac/ui/button'
import { Notice } from '@almanac/ui/notice'
import { PageHead } from '@almanac/ui/page-head'
import { Problem } from '@almanac/ui/problem'
import { Section } from '@almanac/ui/section'
import { Skeleton } from '@almanac/ui/skeleton'
import { TextLink } from '@almanac/ui/text-link'
import { useWords } from '@almanac/words/use-words'
import { useQuery } from '@tanstack/react-query'
import Link from 'next/link'
import { usePathname, useRouter, useSearchParams } from 'next/navigation'
import { SaidOnPhone } from '@/client/call/said-on-phone'
import { readFailure } from '@/client/failure'
import { JobLines } from '@/client/job-lines'
import { usePermission, useSession } from '@/client/providers'
import { useBedTexts } from '@/client/use-bed-texts'
import { BedProof } from '@/client/visit-proof'
import { WhomBlock } from '@/client/whom-line'
import { BedActions, BedActionsOnPhone } from './bed-actions.tsx'
import { BedDue } from './bed-due.tsx'
import { BedFactsList } from './bed-facts-list.tsx'
import { BedForecastPart } from './bed-forecast-part.tsx'
import { BedKit } from './bed-kit.tsx'
import { BedPicture } from './bed-picture.tsx'
import { EditFacts } from './edit-facts.tsx'
import { InspectionForm } from './inspect-bed.tsx'
import { Inspections } from './inspections.tsx'
import { OtherBeds } from './other-beds.tsx'

/** A bed: drawn to scale in its tank, its facts with where each came from, what is expected of it and why, and its kit. */
export function Bed({ bedId }: { bedId: string }) {
  const texts = useBedTexts()
  const words = useWords('bed')
  const { api } = useSession()
  const mayChange = usePermission('change:site')
  const query = useQuery(api.beds.page.queryOptions({ input: { bedId } }))
  const router = useRouter()
  const path = usePathname()
  // Which form is open stands in the address, so that a list can lead straight into it.
  const form = useSearchParams().get('form')
  const open = (which: string | null) => router.replace(which ? `${path}?form=${which}` : path, { scroll: false })
  if (query.error)
    return <Problem happened={readFailure(query.error).message} onRetry={() => void query.refetch()} retrying={query.isFetching} />
  const bed = query.data
  if (!bed) return <Skeleton lines={14} label={words('loading')} />
  const place = bed.site?.label ?? words('workshop')
  const ended = bed.endedLatest !== null
  return (
    <>
      <PageHead
        title={bed.softener && bed.softener.tankCount > 1 ? words('tankOf', { place, number: String(bed.tank.position) }) : place}
        lead={[texts.tank(bed.tank), texts.resin(bed), bed.site?.town].filter(Boolean).join(', ')}
        above={
          <span className="flex flex-wrap gap-x-2">
            <TextLink href="/sites" link={Link}>
              {words('sites')}
            </TextLink>
            {bed.site ? (
              <>
                <span aria-hidden="true">/</span>
                <TextLink href={`/sites/${bed.site.id}`} link={Link}>
                  {bed.site.label}
                </TextLink>
              </>
            ) : null}
          </span>
        }
        actions={ended ? undefined : <BedActions bed={bed} onInspect={() => open('inspection')} />}
      />
      {ended ? <Notice kind="mind">{words('ended', { when: texts.span(bed.endedEarliest, bed.endedLatest) ?? '' })}</Notice> : null}
      {/* In the order a phone shows it: when due, whom to call, the drawing. Side by side the drawing stands at the left. */}
      <div className="grid gap-x-12 lg:grid-cols-2 lg:grid-rows-[auto_auto_1fr]">
        {ended ? null : (
          <div className="min-w-0 lg:col-start-2 lg:row-start-1">
            <BedDue bed={bed} mayChange={mayChange} onEdit={() => open('facts')} />
            {bed.site ? (
              <div className="mt-4 border-t border-line pt-4">
                <WhomBlock whom={bed.site.whom} />
                {bed.softener ? <SaidOnPhone siteId={bed.site.id} softenerId={bed.softener.id} label={bed.softener.label} /> : null}
              </div>
            ) : null}
            <BedActionsOnPhone bed={bed} onInspect={() => open('inspection')} />
          </div>
        )}
        <div className="min-w-0 max-lg:mt-8 lg:col-start-1 lg:row-span-2 lg:row-start-1">
          <BedPicture bed={bed} title={words('at', { place })} />
        </div>
        {ended ? null : (
          <div className="mt-8 min-w-0 lg:col-start-2 lg:row-span-2 lg:row-start-2">
            <BedForecastPart bed={bed} mayChange={mayChange} onEdit={() => open('facts')} onInspect={() => open('inspection')} />
            <Section title={words('openJobs')}>
              <JobLines jobs={bed.openJobs} none={words('noOpenJobs')} />
            </Section>
          </div>
        )}
        <div className="mt-8 min-w-0 lg:col-start-1">
          <Section title={words('facts')} actions={mayChange ? <Button onClick={() => open('facts')}>{words('editFacts')}</Button> : null}>
            <BedFactsList bed={bed} />
          </Section>
        </div>
      </div>
      {ended ? null : <BedKit bed={bed} />}
      <BedProof bedId={bed.id} />
      <Section title={words('inspections')}>
        <Inspections bed={bed} />
      </Section>
      {bed.otherBeds.length > 0 ? <OtherBeds bed={bed} /> : null}
      {form === 'facts' && mayChange ? <EditFacts bed={bed} onClose={() => open(null)} /> : null}
      {form === 'inspection' && mayChange ? <InspectionForm bed={bed} onClose={() => open(null)} /> : null}
    </>
  )
}
