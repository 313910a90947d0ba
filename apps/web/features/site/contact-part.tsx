'use client'
import type { ContactLine } from '@almanac/contract/site-facts'
import { type Channel, channels } from '@almanac/records/channel'
import { Button } from '@almanac/ui/button'
import { useDisplay } from '@almanac/ui/display'
import { StatusWord } from '@almanac/ui/status-word'
import { formatDay } from '@almanac/units/format-day'
import { useWords } from '@almanac/words/use-words'
import { useState } from 'react'
import { PhoneLink } from '@/client/phone-link'
import { ConsentForm } from './consent-form.tsx'

type Props = { contact: ContactLine; mayChange: boolean; onChange: () => void }

/** One contact: numbers to reach them, and for each channel what they answered, from where, since when. */
export function ContactPart({ contact, mayChange, onChange }: Props) {
  const display = useDisplay()
  const [words, roles, saving] = [useWords('site'), useWords('contactRole'), useWords('saving')]
  const role = roles(contact.role).toLowerCase()
  const name = contact.name ?? words('thisContact')
  const [asked, setAsked] = useState<Channel | null>(null)
  return (
    <li className="border-t border-line py-3">
      <div className="flex flex-wrap items-baseline justify-between gap-x-4">
        <span>
          <span className="font-medium">{contact.name ?? words('noName')}</span>
          <span className="text-soft">, {contact.siteId ? words('ofThisSite', { role }) : role}</span>
        </span>
        {mayChange ? (
          <Button kind="quiet" onClick={onChange}>
            {saving('edit')}
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
            {words('cameBack')}
          </StatusWord>
        ) : null}
        {contact.phone || contact.otherPhones.length > 0 || contact.email ? null : (
          <span className="text-soft italic">{words('noWay')}</span>
        )}
      </p>
      <table className="mt-1 w-full text-left text-small">
        <caption className="sr-only">{words('consentOf', { name })}</caption>
        <tbody>
          {channels.map((value) => {
            const label = words(`channel/${value}`)
            const consent = contact.consents.find((one) => one.channel === value)
            return (
              <tr key={value}>
                <th scope="row" className="w-24 py-0.5 pr-2 font-normal text-soft">
                  {label}
                </th>
                <td className="py-0.5">
                  {consent ? (
                    <StatusWord shape={consent.granted ? 'tick' : 'cross'} tone={consent.granted ? 'done' : 'danger'}>
                      {words(consent.granted ? 'yes' : 'no')}
                    </StatusWord>
                  ) : (
                    <StatusWord shape="dashed" tone="soft">
                      {words('notAsked')}
                    </StatusWord>
                  )}
                  {consent ? (
                    <span className="text-soft">
                      {' '}
                      {words(`asked/${consent.source}`)}, {formatDay(consent.sinceDay, display)}
                    </span>
                  ) : null}
                </td>
                <td className="py-0.5 text-right">
                  {mayChange ? (
                    <button type="button" className="min-h-6 underline decoration-edge underline-offset-4" onClick={() => setAsked(value)}>
                      {words(consent ? 'change' : 'note')}
                      <span className="sr-only"> {words('consentFor', { name, channel: label })}</span>
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
