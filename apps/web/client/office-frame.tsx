'use client'
import { AppFrame } from '@almanac/ui/app-frame'
import { ToastProvider } from '@almanac/ui/toast'
import { useWords } from '@almanac/words/use-words'
import Link from 'next/link'
import { usePathname } from 'next/navigation'
import type { ReactNode } from 'react'
import { AccountActions } from './account-menu.tsx'
import { RecordCall } from './call/record-call.tsx'
import { Find } from './find/find.tsx'
import { navigationFor } from './pages.ts'
import { useSession } from './providers.tsx'

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
        {children}
      </AppFrame>
    </ToastProvider>
  )
}
