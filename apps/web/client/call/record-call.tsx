'use client'
import { PhoneMark } from '@almanac/ui/marks'
import { usePathname } from 'next/navigation'
import { useState } from 'react'
import { useOnKey, useSlashKey } from '../find/slash-key.ts'
import { usePermission } from '../providers.tsx'
import { CallForm } from './call-form.tsx'

const KEY = 'c'
const SITE_PAGE = /^\/sites\/([0-9a-f]{8}(?:-[0-9a-f]{4}){3}-[0-9a-f]{12})$/

/** One press from every office page, or the key C: a call. Where a site's page is open, the call is about that site until somebody says otherwise. */
export function RecordCall() {
  const may = usePermission('record:call')
  const { on } = useSlashKey()
  const siteId = SITE_PAGE.exec(usePathname())?.[1] ?? null
  const [open, setOpen] = useState(false)
  useOnKey(KEY, () => {
    if (may) setOpen(true)
  })
  if (!may) return null
  return (
    <>
      <button
        type="button"
        onClick={() => setOpen(true)}
        title={on ? 'Record a call (C)' : 'Record a call'}
        aria-label="Record a call"
        aria-keyshortcuts={on ? KEY : undefined}
        className="ml-2 flex min-h-control w-11 shrink-0 items-center justify-center gap-2 hover:bg-wash sm:border sm:border-ink 2xl:w-auto 2xl:px-3"
      >
        <PhoneMark />
        <span className="whitespace-nowrap max-2xl:hidden">Record a call</span>
      </button>
      {open ? <CallForm startSiteId={siteId} onClose={() => setOpen(false)} /> : null}
    </>
  )
}
