'use client'
import { useWords } from '@almanac/words/use-words'
import type { SiteSpeaking } from './site-columns.tsx'

/** How the list of sites is said to whoever looks. */
export const useSiteSpeaking = (): SiteSpeaking => ({ words: useWords('sites'), kinds: useWords('jobKind') })
