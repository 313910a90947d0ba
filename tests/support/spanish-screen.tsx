import type { Me } from '@almanac/contract/session'
import { messagesOf } from '@almanac/words/messages-of'
import type { ReactNode } from 'react'
import { renderToStaticMarkup } from 'react-dom/server'
import { FieldHome } from '../../apps/web/client/field/field-home.tsx'
import { Providers } from '../../apps/web/client/providers.tsx'

export const SPANISH = 'es-US'
export const COMPANY = {
  id: 'c',
  name: 'Larkmoor',
  unitSystem: 'us',
  currency: 'USD',
  locale: SPANISH,
  timeZone: 'America/Chicago',
} as const
const PERSON = { id: 'p', name: 'Otis', email: 'otis@larkmoor.example.com', language: 'es', secondStep: false } as const

/** A technician who reads Spanish. */
const me = {
  person: PERSON,
  company: COMPANY,
  role: 'technician',
  permissions: ['close:visit'],
  companies: [],
  today: '2026-11-29',
  figures: [],
} as unknown as Me

/** A part of a screen as the browser first shows it to them, with what is read to those who do not see it. `part` says whose words its page brings. */
export function spanishScreen(part: 'field' | 'office', shown: ReactNode): string {
  const messages = messagesOf(part, SPANISH)
  const html = renderToStaticMarkup(
    <Providers me={me} messages={messages}>
      <FieldHome me={me} messages={messages}>
        {shown}
      </FieldHome>
    </Providers>,
  )
  const said = [...html.matchAll(/(?:aria-label|placeholder)="([^"]*)"/g)].map(([, text]) => text).join(' · ')
  return `${html.replace(/<[^>]+>/g, ' · ')} · ${said}`
    .replace(/&#x27;/g, "'")
    .replace(/&quot;/g, '"')
    .replace(/&amp;/g, '&')
    .replace(/\s+/g, ' ')
}
