import { messagesOf } from '@almanac/words/messages-of'
import type { Metadata } from 'next'
import type { ReactNode } from 'react'
import { FieldHome } from '@/client/field/field-home'
import { Providers } from '@/client/providers'
import { meOf } from '@/server/procedures/session'
import { signedIn } from '@/server/signed-in'

export const dynamic = 'force-dynamic'
export const metadata: Metadata = { manifest: '/field.webmanifest' }

/** The tablet's screens bring their own frame: its title is the visit being worked on. */
export default async function FieldLayout({ children }: { children: ReactNode }) {
  const me = await meOf(await signedIn())
  const messages = messagesOf('field', me.company.locale)
  return (
    <Providers me={me} messages={messages}>
      <FieldHome me={me} messages={messages}>
        {children}
      </FieldHome>
    </Providers>
  )
}
