'use client'
import type { Rounds } from '@almanac/contract/agreements'
import { agreementKindWords } from '@almanac/records/agreement'
import { Button } from '@almanac/ui/button'
import { useDisplay } from '@almanac/ui/display'
import { Section } from '@almanac/ui/section'
import { TextLink } from '@almanac/ui/text-link'
import { formatDay } from '@almanac/units/format-day'
import Link from 'next/link'
import { useState } from 'react'
import { everyWords, priceWords } from '@/client/agreements/agreement-words'
import { RenewAgreement } from '@/client/agreements/renew-agreement'
import { useMoney } from '@/client/use-money'
import { useToday } from '@/client/use-today'

/** Agreements that end soon or ended lately, each with its price line. */
export function Ending({ rows }: { rows: Rounds['ending'] }) {
  const display = useDisplay()
  const money = useMoney()
  const today = useToday()
  const [renewing, setRenewing] = useState<Rounds['ending'][number] | null>(null)
  return (
    <Section title="Ending soon">
      {rows.length === 0 ? <p className="text-soft">No agreement ends within two months.</p> : null}
      <ul aria-label="Agreements that end soon" className={rows.length > 0 ? 'border-t border-line' : undefined}>
        {rows.map((one) => (
          <li key={one.id} className="flex flex-wrap items-center gap-x-6 gap-y-1 border-b border-line py-2">
            <span className="grow basis-64">
              <TextLink href={`/sites/${one.siteId}`} link={Link}>
                {[one.siteLabel, one.town].filter(Boolean).join(', ')}
              </TextLink>
              <span className="block text-small text-soft">
                {[one.customerName, agreementKindWords[one.kind], everyWords(one.every)].filter(Boolean).join(' · ')}
              </span>
            </span>
            <span className="basis-52">
              {one.lastDay < today ? 'ended' : 'ends'} {formatDay(one.lastDay, display)}
              <span className="block text-small text-soft">
                {one.endWhy === 'sold' ? 'the site changed hands' : priceWords(one.price, money.words)}
              </span>
            </span>
            {one.endedDay === null ? (
              <Button onClick={() => setRenewing(one)} aria-label={`Renew at ${one.siteLabel}`}>
                Renew
              </Button>
            ) : null}
          </li>
        ))}
      </ul>
      {renewing ? <RenewAgreement agreement={renewing} onClose={() => setRenewing(null)} /> : null}
    </Section>
  )
}
