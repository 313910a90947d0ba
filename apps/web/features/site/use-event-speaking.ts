'use client'
import { useWords } from '@almanac/words/use-words'
import { useSession } from '@/client/providers'
import { useBedTexts } from '@/client/use-bed-texts'
import { useSourceText } from '@/client/use-source-text'
import type { EventSpeaking } from './happening-words.ts'

/** How the happenings of a site are said to whoever looks. */
export function useEventSpeaking(): EventSpeaking {
  const display = useSession().me.company
  return {
    ...{ display, texts: useBedTexts(), source: useSourceText(), words: useWords('history'), values: useWords('site') },
    ...{ resins: useWords('resinKind'), causes: useWords('endCause'), points: useWords('visit'), water: useWords('water') },
    ...{ kinds: useWords('jobKind'), states: useWords('jobState'), outcomes: useWords('outcome') },
  }
}
