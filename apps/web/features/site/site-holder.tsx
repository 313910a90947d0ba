'use client'
import type { ContactLine } from '@almanac/contract/site-facts'
import type { SitePage } from '@almanac/contract/sites'
import { Button } from '@almanac/ui/button'
import { useDisplay } from '@almanac/ui/display'
import { Section } from '@almanac/ui/section'
import { formatDay } from '@almanac/units/format-day'
import { useState } from 'react'
import { ContactForm } from './contact-form.tsx'
import { ContactPart } from './contact-part.tsx'
import { EditCustomer } from './edit-customer.tsx'
import { SellHouse } from './sell-house.tsx'

type Open = { form: 'contact'; contact: ContactLine | null } | { form: 'customer' } | { form: 'sold' } | null

/** Current customer, how each of their contacts may be reached, and who held it before. */
export function SiteHolder({ site, mayChange }: { site: SitePage; mayChange: boolean }) {
  const display = useDisplay()
  const [open, setOpen] = useState<Open>(null)
  const present = site.tenures.find((tenure) => tenure.toDay === null)
  const before = site.tenures.filter((tenure) => tenure !== present)
  const close = () => setOpen(null)
  return (
    <Section
      title={present ? present.customer.name : 'No customer'}
      actions={mayChange ? <Button onClick={() => setOpen({ form: 'sold' })}>{present ? 'House sold' : 'Set customer'}</Button> : null}
    >
      {present ? (
        <p className="flex flex-wrap items-baseline justify-between gap-x-4 text-small text-soft">
          <span>
            {[
              present.customer.reference ? `customer ${present.customer.reference}` : null,
              present.fromDay ? `customer since ${formatDay(present.fromDay, display)}` : null,
              present.customer.sites > 1 ? `${present.customer.sites} sites` : null,
            ]
              .filter(Boolean)
              .join(', ') || 'customer'}
          </span>
          {mayChange ? (
            <Button kind="quiet" aria-label="Edit customer" onClick={() => setOpen({ form: 'customer' })}>
              Edit
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
      {present && site.contacts.length === 0 ? <p className="text-soft">No phone, email or address recorded.</p> : null}
      {present && mayChange ? (
        <p className="mt-3">
          <Button onClick={() => setOpen({ form: 'contact', contact: null })}>Add a contact</Button>
        </p>
      ) : null}
      {before.length > 0 ? (
        <details className="mt-3 text-small">
          <summary className="cursor-pointer text-soft">
            Previous customer: {before.length === 1 ? 'one other' : `${before.length} others`}
          </summary>
          <ul className="mt-1 border-l-2 border-line pl-3">
            {before.map((tenure) => (
              <li key={tenure.id} className="py-0.5">
                {tenure.customer.name}
                <span className="text-soft">
                  {tenure.fromDay ? `, from ${formatDay(tenure.fromDay, display)}` : ''}
                  {tenure.toDay ? `, until ${formatDay(tenure.toDay, display)}` : ''}
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
