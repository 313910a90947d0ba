'use client'
import type { RebedFirm } from '@almanac/softener/rebed/rebed-of-record'
import { useWords } from '@almanac/words/use-words'
import { useMemo } from 'react'
import { useSession } from './providers.tsx'

/** The company as kits and drawings are worked out and said, in the language of whoever looks. */
export function useRebedFirm(): RebedFirm {
  const { me, figures } = useSession()
  const words = useWords('kit')
  return useMemo(() => ({ figures, display: me.company, words }), [figures, me, words])
}
