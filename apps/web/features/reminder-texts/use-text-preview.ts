import type { PreviewTextInput } from '@almanac/contract/own-texts'
import { keepPreviousData, useQuery } from '@tanstack/react-query'
import { useEffect, useState } from 'react'
import { useSession } from '@/client/providers'

/** Long enough that whoever types is not asked for at every letter, ms. */
const PAUSE_MS = 300

type Typed = Omit<PreviewTextInput, 'bedId' | 'siteId'>

/** How what is typed would read, for a bed, for a site's own, or for made-up facts. Until the answer is in, the one before is shown. */
export function useTextPreview(typed: Typed, about: { of: 'bed' | 'site'; id: string } | null) {
  const { api } = useSession()
  const [asked, setAsked] = useState(typed)
  const text = JSON.stringify(typed)
  useEffect(() => {
    const waiting = setTimeout(() => setAsked(JSON.parse(text) as Typed), PAUSE_MS)
    return () => clearTimeout(waiting)
  }, [text])
  const input = { ...asked, bedId: about?.of === 'bed' ? about.id : null, siteId: about?.of === 'site' ? about.id : null }
  return useQuery(api.reminders.previewText.queryOptions({ input, placeholderData: keepPreviousData }))
}
