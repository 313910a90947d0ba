'use client'
import { siteHoursWords } from '@almanac/service-rules/day-sheets/site-hours'
import { Button } from '@almanac/ui/button'
import { DefinitionList } from '@almanac/ui/definition-list'
import { LinkButton } from '@almanac/ui/link-button'
import { PageHead } from '@almanac/ui/page-head'
import { Problem } from '@almanac/ui/problem'
import { Section } from '@almanac/ui/section'
import { Skeleton } from '@almanac/ui/skeleton'
import { TextLink } from '@almanac/ui/text-link'
import { useWords } from '@almanac/words/use-words'
import { useQuery } from '@tanstack/react-query'
import Link from 'next/link'
import { useState } from 'react'
import { readFailure } from '@/client/failure'
import { JobLines } from '@/client/job-lines'
import { usePermission, useSession } from '@/client/providers'
import { WhomLine } from '@/client/whom-line'
import { NewSoftenerForm } from './add-softener.tsx'
import { EditSite } from './edit-site.tsx'
import { SiteAgreements } from './site-agreements.tsx'
import { SiteCalls } from './site-calls.tsx'
import { SiteGuides } from './site-guides.tsx'
import { SiteHistory } from './site-history.tsx'
import { SiteHolder } from './site-holder.tsx'
import { SoftenerPart } from './softener-part.tsx'
import { WaterTests } from './water-tests.tsx'

/** A site: what stands there, what has happened, who holds it, how to get in, what water it has. */
export function Site({ siteId }: { siteId: string }) {
  const { api, me } = useSession()
  const [words, water] = [useWords('site'), useWords('water')]
  const mayChange = usePermission('change:site')
  const mayPropose = usePermission('propose:job')
  const mayTest = usePermission('change:water')
  const owner = usePermission('manage:company')
  const mayCall = usePermission('record:call')
  const [form, setForm] = useState<'site' | 'softener' | null>(null)
  const query = useQuery(api.sites.page.queryOptions({ input: { siteId } }))
  if (query.error)
    return <Problem happened={readFailure(query.error).message} onRetry={() => void query.refetch()} retrying={query.isFetching} />
  const site = query.data
  if (!site) return <Skeleton lines={14} label={words('loading')} />
  const address = [site.street, site.town, site.region, site.postcode].filter(Boolean).join(', ')
  const { supply } = site
  return (
    <>
      <PageHead
        title={site.label}
        lead={
          <>
            {address === site.label ? null : <span className="block">{address}</span>}
            <span className="block text-ink">
              <WhomLine whom={site.whom} />
            </span>
          </>
        }
        above={
          <TextLink href="/sites" link={Link}>
            {words('sites')}
          </TextLink>
        }
        actions={
          <>
            {mayTest ? (
              <LinkButton href={`/water/tests/new?site=${site.id}`} link={Link}>
                {words('recordTest')}
              </LinkButton>
            ) : null}
            {mayPropose ? (
              <LinkButton href={`/jobs/new?site=${site.id}`} kind="ink" link={Link}>
                {words('addJob')}
              </LinkButton>
            ) : null}
          </>
        }
      />
      <div className="grid gap-x-12 lg:grid-cols-[minmax(0,5fr)_minmax(0,3fr)]">
        <div className="min-w-0">
          <Section
            title={words('softeners', { count: Math.max(1, site.softeners.length) })}
            actions={mayChange ? <Button onClick={() => setForm('softener')}>{words('addSoftener')}</Button> : null}
          >
            {site.softeners.length === 0 ? <p className="text-soft">{words('noSoftener')}</p> : null}
            {site.softeners.map((softener) => (
              <SoftenerPart key={softener.id} siteId={site.id} softener={softener} mayChange={mayChange} />
            ))}
          </Section>
          <Section title={words('waterTests')}>
            <WaterTests siteId={site.id} mayChange={mayTest} />
          </Section>
          <Section title={words('history')}>
            <SiteHistory siteId={site.id} />
            {owner ? (
              <p className="mt-3">
                <TextLink href={`/changes?site=${site.id}`} link={Link}>
                  {words('whoChanged')}
                </TextLink>
              </p>
            ) : null}
          </Section>
        </div>
        <div className="min-w-0 max-lg:mt-8">
          <SiteHolder site={site} mayChange={mayChange} />
          <Section title={words('openJobs')}>
            <JobLines jobs={site.openJobs} none={words('noOpenJobs')} />
          </Section>
          {mayChange ? <SiteAgreements siteId={site.id} softeners={site.softeners} /> : null}
          {mayCall ? <SiteCalls siteId={site.id} /> : null}
          {mayCall ? <SiteGuides siteId={site.id} softeners={site.softeners} /> : null}
          <Section
            title={words('addressAndAccess')}
            actions={mayChange ? <Button onClick={() => setForm('site')}>{words('edit')}</Button> : null}
          >
            <DefinitionList
              facts={[
                { name: words('address'), value: address },
                { name: words('access'), value: site.accessNotes },
                { name: words('visitingHours'), value: siteHoursWords(site.visitHours, me.company, words) },
                {
                  name: words('water'),
                  value: supply ? (
                    <>
                      <TextLink href={`/water/${supply.id}`} link={Link}>
                        {supply.name}
                      </TextLink>
                      <span className="block text-small text-soft">
                        {words(`kind/${supply.kind}`)}
                        {supply.disinfectant ? `, ${water(`line/${supply.disinfectant}`)}` : ''}
                        {supply.residualMgL ? ` ${supply.residualMgL} mg/L` : ''}
                      </span>
                    </>
                  ) : null,
                },
                ...(site.notes ? [{ name: words('notes'), value: site.notes }] : []),
              ]}
            />
          </Section>
        </div>
      </div>
      {form === 'site' ? <EditSite site={site} onClose={() => setForm(null)} /> : null}
      {form === 'softener' ? <NewSoftenerForm siteId={site.id} onClose={() => setForm(null)} /> : null}
    </>
  )
}
