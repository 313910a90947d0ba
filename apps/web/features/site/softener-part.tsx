'use client'
import type { BedLine } from '@almanac/contract/site-facts'
import type { SiteSoftener } from '@almanac/contract/sites'
import { BedThumb } from '@almanac/ui/bed-thumb'
import { Button } from '@almanac/ui/button'
import { useDisplay } from '@almanac/ui/display'
import { DueRibbon } from '@almanac/ui/due-ribbon'
import { StatusWord } from '@almanac/ui/status-word'
import { TextLink } from '@almanac/ui/text-link'
import { formatDay, formatMonth } from '@almanac/units/format-day'
import { useWords } from '@almanac/words/use-words'
import Link from 'next/link'
import { useState } from 'react'
import { ribbonAxis, thumbOfTank } from '@/client/bed-facts-words'
import { SaidOnPhone } from '@/client/call/said-on-phone'
import { useBedTexts } from '@/client/use-bed-texts'
import { useRebedFirm } from '@/client/use-rebed-firm'
import { useToday } from '@/client/use-today'
import { EditSoftener } from './edit-softener.tsx'
import { PreTreatmentForm, PreTreatments } from './pre-treatments.tsx'

/** A softener: its tanks, in each the bed in service, and the beds before it folded away. */
export function SoftenerPart({ siteId, softener, mayChange }: { siteId: string; softener: SiteSoftener; mayChange: boolean }) {
  const texts = useBedTexts()
  const words = useWords('site')
  const display = useDisplay()
  const saving = useWords('saving')
  const [form, setForm] = useState<'softener' | 'pre-treatment' | null>(null)
  const installed = texts.span(softener.installedEarliest, softener.installedLatest, softener.installedAsWritten)
  const about = [
    softener.location,
    softener.arrangement === 'single' ? null : words(`arranged/${softener.arrangement}`),
    installed ? words('installed', { when: installed }) : null,
    softener.peopleServed ? words('serves', { people: String(softener.peopleServed) }) : null,
  ]
  return (
    <article className="border-b border-line py-4 first:pt-0 last:border-0">
      <div className="flex flex-wrap items-baseline justify-between gap-x-6 gap-y-1">
        <h3 className="font-semibold">
          {softener.label}
          {softener.condemnedDay ? (
            <span className="ml-3 font-normal">
              <StatusWord shape="cross" tone="danger">
                {words('condemned', { day: formatDay(softener.condemnedDay, display) })}
              </StatusWord>
            </span>
          ) : null}
        </h3>
        <span className="flex flex-wrap items-baseline gap-x-4">
          <TextLink href={`/softeners/${softener.id}/settings`} link={Link}>
            {words('card')}
          </TextLink>
          {mayChange ? (
            <>
              <Button kind="quiet" onClick={() => setForm('pre-treatment')}>
                {words('addPreTreatment')}
              </Button>
              <Button kind="quiet" onClick={() => setForm('softener')}>
                {saving('edit')}
              </Button>
            </>
          ) : null}
        </span>
      </div>
      <p className="text-small text-soft">{about.filter(Boolean).join(', ')}</p>
      <PreTreatments softener={softener} mayChange={mayChange} />
      {softener.notes ? <p className="mt-2 max-w-[70ch]">{softener.notes}</p> : null}
      <ul className="mt-3 flex flex-col gap-4">
        {softener.tanks.map((tank) => (
          <TankLineItem key={tank.id} tank={tank} numbered={softener.tanks.length > 1} />
        ))}
      </ul>
      {softener.tanks.some((tank) => tank.beds.some((bed) => bed.endedLatest === null)) ? (
        <SaidOnPhone siteId={siteId} softenerId={softener.id} label={softener.label} />
      ) : null}
      {form === 'softener' ? <EditSoftener softener={softener} onClose={() => setForm(null)} /> : null}
      {form === 'pre-treatment' ? <PreTreatmentForm softenerId={softener.id} onClose={() => setForm(null)} /> : null}
    </article>
  )
}

function TankLineItem({ tank, numbered }: { tank: SiteSoftener['tanks'][number]; numbered: boolean }) {
  const firm = useRebedFirm()
  const texts = useBedTexts()
  const [words, causes] = [useWords('site'), useWords('endCause')]
  const today = useToday()
  const bed = tank.beds.find((one) => one.endedLatest === null)
  const ended = tank.beds.filter((one) => one.endedLatest !== null)
  const axis = ribbonAxis(today)
  return (
    <li className="grid grid-cols-[2.5rem_minmax(0,1fr)] gap-x-4">
      <BedThumb thumb={thumbOfTank(tank, bed ?? ended[0], firm)} height={64} />
      <div className="min-w-0">
        <p>
          {numbered ? words('tank', { number: String(tank.position) }) : ''}
          {bed ? (
            <TextLink href={`/beds/${bed.id}`} link={Link} strong>
              {[texts.tank(tank), texts.resin(bed)].filter(Boolean).join(', ')}
            </TextLink>
          ) : (
            <span>
              {texts.tank(tank)}, <span className="text-soft">{words('noBed')}</span>
            </span>
          )}
        </p>
        {bed ? <BedInService bed={bed} axis={axis} /> : null}
        {bed ? (
          <p className="mt-1 text-small">
            <TextLink href={`/whats-wrong?bedId=${bed.id}`} link={Link}>
              {words('whatsWrong')}
            </TextLink>
          </p>
        ) : null}
        {ended.length > 0 ? (
          <details className="mt-1 text-small">
            <summary className="cursor-pointer text-soft">{words('bedsBefore', { count: ended.length })}</summary>
            <ul className="mt-1 border-l-2 border-line pl-3">
              {ended.map((one) => (
                <li key={one.id} className="py-0.5">
                  <TextLink href={`/beds/${one.id}`} link={Link}>
                    {words('fromTo', {
                      from: texts.began(one) ?? words('startUnknown'),
                      to: texts.span(one.endedEarliest, one.endedLatest) ?? '',
                    })}
                  </TextLink>
                  <span className="text-soft">, {causes(one.endCause ?? 'unknown').toLowerCase()}</span>
                </li>
              ))}
            </ul>
          </details>
        ) : null}
      </div>
    </li>
  )
}

function BedInService({ bed, axis }: { bed: BedLine; axis: ReturnType<typeof ribbonAxis> }) {
  const texts = useBedTexts()
  const words = useWords('site')
  const display = useDisplay()
  const began = texts.began(bed)
  return (
    <>
      <p className="text-small text-soft">
        {began ? words('bedInstalled', { when: began }) : words('bedAgeUnknown')},{' '}
        {bed.lastSeenDay ? words('lastSeen', { day: formatDay(bed.lastSeenDay, display) }) : words('neverSeen')}
      </p>
      {bed.due10Day && bed.due50Day ? (
        <div className="mt-1 grid max-w-xl grid-cols-[minmax(0,1fr)_auto] items-center gap-4">
          <DueRibbon early={bed.due10Day} middle={bed.due50Day} late={bed.due90Day} axis={axis} />
          <span className="text-small whitespace-nowrap">
            {words.rich('dueAbout', { month: formatMonth(bed.due50Day, display), b: (text) => <strong>{text}</strong> })}
          </span>
        </div>
      ) : (
        <p className="text-small text-soft">{words('noDueDate')}</p>
      )}
    </>
  )
}
