'use client'
import type { ContactLine } from '@almanac/contract/site-facts'
import { type Channel, channels, channelWords } from '@almanac/records/channel'
import { choicesOf } from '@almanac/records/choices'
import { consentSourceWords } from '@almanac/records/consent-source'
import { contactRoleWords } from '@almanac/records/contact-role'
import { Button } from '@almanac/ui/button'
import { useDisplay } from '@almanac/ui/display'
import { StatusWord } from '@almanac/ui/status-word'
import { formatDay } from '@almanac/units/format-day'
import { useState } from 'react'
import { PhoneLink } from '@/client/phone-link'
import { ConsentForm } from './consent-form.tsx'

type Props = { contact: ContactLine; mayChange: boolean; onChange: () => void }

/** One contact: numbers to reach them, and for each channel what they answered, from where, since when. */
export function ContactPart({ contact, mayChange, onChange }: Props) {
  const display = useDisplay()
  const [asked, setAsked] = useState<Channel | null>(null)
  return (
    <li className="border-t border-line py-3">
      <div className="flex flex-wrap items-baseline justify-between gap-x-4">
        <span>
          <span className="font-medium">{contact.name ?? 'No name'}</span>
          <span className="text-soft">
            , {contactRoleWords[contact.role].toLowerCase()}
            {contact.siteId ? ' of this site' : ''}
          </span>
        </span>
        {mayChange ? (
          <Button kind="quiet" onClick={onChange}>
            Edit
          </Button>
        ) : null}
      </div>
      <p className="flex flex-wrap gap-x-4">
        {[contact.phone, ...contact.otherPhones].map((phone) => (phone ? <PhoneLink key={phone} phone={phone} /> : null))}
        {contact.email ? (
          <a className="break-all underline decoration-edge underline-offset-4" href={`mailto:${contact.email}`}>
            {contact.email}
          </a>
        ) : null}
        {contact.emailIsDead ? (
          <StatusWord shape="triangle" tone="danger">
            email came back
          </StatusWord>
        ) : null}
        {contact.phone || contact.otherPhones.length > 0 || contact.email ? null : (
          <span className="text-soft italic">no phone or email</span>
        )}
      </p>
      <table className="mt-1 w-full text-left text-small">
        <caption className="sr-only">Consent of {contact.name ?? 'this contact'} by channel</caption>
        <tbody>
          {choicesOf(channels, channelWords).map(({ value, label }) => {
            const consent = contact.consents.find((one) => one.channel === value)
            return (
              <tr key={value}>
                <th scope="row" className="w-24 py-0.5 pr-2 font-normal text-soft">
                  {label}
                </th>
                <td className="py-0.5">
                  {consent ? (
                    <StatusWord shape={consent.granted ? 'tick' : 'cross'} tone={consent.granted ? 'done' : 'danger'}>
                      {consent.granted ? 'yes' : 'no'}
                    </StatusWord>
                  ) : (
                    <StatusWord shape="dashed" tone="soft">
                      not asked
                    </StatusWord>
                  )}
                  {consent ? (
                    <span className="text-soft">
                      {' '}
                      {consentSourceWords[consent.source].toLowerCase()}, {formatDay(consent.sinceDay, display)}
                    </span>
                  ) : null}
                </td>
                <td className="py-0.5 text-right">
                  {mayChange ? (
                    <button type="button" className="min-h-6 underline decoration-edge underline-offset-4" onClick={() => setAsked(value)}>
                      {consent ? 'change' : 'note'}
                      <span className="sr-only">
                        {' '}
                        consent of {contact.name ?? 'this contact'}, {label}
                      </span>
                    </button>
                  ) : null}
                </td>
              </tr>
            )
          })}
        </tbody>
      </table>
      {asked ? <ConsentForm contact={contact} channel={asked} onClose={() => setAsked(null)} /> : null}
    </li>
  )
}
