'use client'
import type { ContactLine } from '@almanac/contract/site-facts'
import type { SitePage } from '@almanac/contract/sites'
import { Button } from '@almanac/ui/button'
import { useDisplay } from '@almanac/ui/display'
import { Section } from '@almanac/ui/section'
import { formatDay } from '@almanac/units/format-day'
import { showWhole } from '@almanac/units/format-number'
import { useWords } from '@almanac/words/use-words'
import { useState } from 'react'
import { ContactForm } from './contact-form.tsx'
import { ContactPart } from './contact-part.tsx'
import { EditCustomer } from './edit-customer.tsx'
import { SellHouse } from './sell-house.tsx'

type Open = { form: 'contact'; contact: ContactLine | null } | { form: 'customer' } | { form: 'sold' } | null

/** Current customer, how each of their contacts may be reached, and who held it before. */
export function SiteHolder({ site, mayChange }: { site: SitePage; mayChange: boolean }) {
  const display = useDisplay()
  const [words, saving] = [useWords('site'), useWords('saving')]
  const [open, setOpen] = useState<Open>(null)
  const present = site.tenures.find((tenure) => tenure.toDay === null)
  const before = site.tenures.filter((tenure) => tenure !== present)
  const close = () => setOpen(null)
  return (
    <Section
      title={present ? present.customer.name : words('noCustomer')}
      actions={mayChange ? <Button onClick={() => setOpen({ form: 'sold' })}>{words(present ? 'houseSold' : 'setCustomer')}</Button> : null}
    >
      {present ? (
        <p className="flex flex-wrap items-baseline justify-between gap-x-4 text-small text-soft">
          <span>
            {[
              present.customer.reference ? words('customerNumber', { reference: present.customer.reference }) : null,
              present.fromDay ? words('customerSince', { day: formatDay(present.fromDay, display) }) : null,
              present.customer.sites > 1 ? words('customerSites', { count: showWhole(present.customer.sites, display) }) : null,
            ]
              .filter(Boolean)
              .join(', ') || words('customer')}
          </span>
          {mayChange ? (
            <Button kind="quiet" aria-label={words('editCustomer')} onClick={() => setOpen({ form: 'customer' })}>
              {saving('edit')}
            </Button>
          ) : null}
        </p>
      ) : null}
      {present?.customer.notes ? <p className="mt-1">{present.customer.notes}</p> : null}
      <ul className="mt-2">
        {site.contacts.map((contact) => (
          <ContactPart key={contact.id} contact={contact} mayChange={mayChange} onChange={() => setOpen({ form: 'contact', contact })} />
        ))}
      </ul>
      {present && site.contacts.length === 0 ? <p className="text-soft">{words('noContact')}</p> : null}
      {present && mayChange ? (
        <p className="mt-3">
          <Button onClick={() => setOpen({ form: 'contact', contact: null })}>{words('addContact')}</Button>
        </p>
      ) : null}
      {before.length > 0 ? (
        <details className="mt-3 text-small">
          <summary className="cursor-pointer text-soft">{words('previous', { count: before.length })}</summary>
          <ul className="mt-1 border-l-2 border-line pl-3">
            {before.map((tenure) => (
              <li key={tenure.id} className="py-0.5">
                {tenure.customer.name}
                <span className="text-soft">
                  {tenure.fromDay ? `, ${words('from', { day: formatDay(tenure.fromDay, display) })}` : ''}
                  {tenure.toDay ? `, ${words('until', { day: formatDay(tenure.toDay, display) })}` : ''}
                </span>
              </li>
            ))}
          </ul>
        </details>
      ) : null}
      {open?.form === 'contact' ? <ContactForm siteId={site.id} contact={open.contact} contacts={site.contacts} onClose={close} /> : null}
      {open?.form === 'customer' && present ? <EditCustomer customer={present.customer} onClose={close} /> : null}
      {open?.form === 'sold' ? <SellHouse siteId={site.id} tenure={present ?? null} onClose={close} /> : null}
    </Section>
  )
}
