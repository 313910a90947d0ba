'use client'
import { AppFrame } from '@almanac/ui/app-frame'
import { LinkButton } from '@almanac/ui/link-button'
import { Notice } from '@almanac/ui/notice'
import { ToastProvider } from '@almanac/ui/toast'
import { dayIn } from '@almanac/units/calendar/zone-clock'
import { formatDay } from '@almanac/units/format-day'
import { useWords } from '@almanac/words/use-words'
import Link from 'next/link'
import { usePathname } from 'next/navigation'
import type { ReactNode } from 'react'
import { AccountActions } from './account-menu.tsx'
import { RecordCall } from './call/record-call.tsx'
import { Find } from './find/find.tsx'
import { navigationFor } from './pages.ts'
import { useSession } from './providers.tsx'

/** On every page of a company that is being closed: when, and where it is taken back. */
function ClosingNote() {
  const { me } = useSession()
  const words = useWords('frame')
  const { closesAt, timeZone } = me.company
  if (!closesAt) return null
  return (
    <Notice
      kind="mind"
      action={
        <LinkButton href="/firm" link={Link}>
          {words('takeBack')}
        </LinkButton>
      }
    >
      {words('closing', { day: formatDay(dayIn(timeZone, closesAt), me.company) })}
    </Notice>
  )
}

/** The office pages' frame; the navigation shows what the role works in first, and only what it may open. */
export function OfficeFrame({ children }: { children: ReactNode }) {
  const { me } = useSession()
  const { nav, more } = navigationFor(me, usePathname(), useWords('page'))
  return (
    <ToastProvider>
      <AppFrame
        product="Rebed Almanac"
        nav={nav}
        more={more}
        search={
          <>
            <Find />
            <RecordCall />
          </>
        }
        person={me.person.name}
        company={me.companies.length > 1 ? me.company.name : undefined}
        account={<AccountActions />}
        link={Link}
      >
        <ClosingNote />
        {children}
      </AppFrame>
    </ToastProvider>
  )
}
