import { messagesOf } from '@almanac/words/messages-of'
import type { ReactNode } from 'react'
import { OfficeFrame } from '@/client/office-frame'
import { Providers } from '@/client/providers'
import { meOf } from '@/server/procedures/session'
import { signedIn } from '@/server/signed-in'

export const dynamic = 'force-dynamic'

export default async function OfficeLayout({ children }: { children: ReactNode }) {
  const me = await meOf(await signedIn())
  return (
    <Providers me={me} messages={messagesOf('office', me.company.locale)}>
      <OfficeFrame>{children}</OfficeFrame>
    </Providers>
  )
}
