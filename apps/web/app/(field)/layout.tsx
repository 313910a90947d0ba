import { messagesOf } from '@almanac/words/messages-of'
import type { ReactNode } from 'react'
import { Providers } from '@/client/providers'
import { meOf } from '@/server/procedures/session'
import { signedIn } from '@/server/signed-in'

export const dynamic = 'force-dynamic'

/** The tablet's screens bring their own frame: its title is the visit being worked on. */
export default async function FieldLayout({ children }: { children: ReactNode }) {
  const me = await meOf(await signedIn())
  return (
    <Providers me={me} messages={messagesOf('field', me.company.locale)}>
      {children}
    </Providers>
  )
}
