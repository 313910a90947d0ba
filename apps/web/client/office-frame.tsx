'use client'
import type { Permission } from '@almanac/records/permission'
import { AppFrame } from '@almanac/ui/app-frame'
import { ToastProvider } from '@almanac/ui/toast'
import Link from 'next/link'
import { usePathname } from 'next/navigation'
import type { ReactNode } from 'react'
import { AccountMenu } from './account-menu.tsx'
import { useSession } from './providers.tsx'

const NAV: { href: string; label: string; permission: Permission }[] = [
  { href: '/coming-due', label: 'Coming due', permission: 'read:due' },
  { href: '/sites', label: 'Sites', permission: 'read:site' },
  { href: '/water', label: 'Water', permission: 'read:water' },
  { href: '/day-sheets', label: 'Day sheets', permission: 'book:visit' },
  { href: '/crews', label: 'Crews', permission: 'manage:crews' },
  { href: '/jobs', label: 'Jobs', permission: 'read:job' },
  { href: '/which-tank', label: 'Which tank?', permission: 'read:site' },
  { href: '/whats-wrong', label: 'What is wrong?', permission: 'read:site' },
  { href: '/reminders', label: 'Reminders', permission: 'read:reminder' },
  { href: '/stores', label: 'Stores', permission: 'read:stores' },
  { href: '/imports', label: 'Import', permission: 'run:import' },
  { href: '/firm', label: 'Figures', permission: 'manage:company' },
  { href: '/today', label: "Today's work", permission: 'close:visit' },
]

/** The office pages' frame; the navigation shows what the role may open. */
export function OfficeFrame({ children }: { children: ReactNode }) {
  const { me } = useSession()
  const path = usePathname()
  const nav = NAV.filter((item) => me.permissions.includes(item.permission) && (item.href !== '/today' || me.role === 'technician')).map(
    ({ href, label }) => ({ href, label, current: path === href || path.startsWith(`${href}/`) }),
  )
  return (
    <AppFrame product="Rebed Almanac" nav={nav} company={me.company.name} role={me.role} account={<AccountMenu />} link={Link}>
      <ToastProvider>{children}</ToastProvider>
    </AppFrame>
  )
}
