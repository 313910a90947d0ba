import { useWords } from '@almanac/words/use-words'
import { keepPreviousData, useQuery } from '@tanstack/react-query'
import { useEffect, useMemo, useState } from 'react'
import { pagesFor } from '../pages.ts'
import { useSession } from '../providers.tsx'
import { useBedTexts } from '../use-bed-texts.ts'
import { type FindWords, findGroups } from './find-options.ts'

/** What the answers are called, in the language of whoever looks. */
function useFindWords(): FindWords {
  const [find, kinds, states, bed] = [useWords('find'), useWords('jobKind'), useWords('jobState'), useBedTexts()]
  return useMemo(() => ({ find, kinds, states, bed }), [find, kinds, states, bed])
}

/** Long enough that a word typed fast is looked up once, ms. */
const PAUSE_MS = 120
const SHORTEST = 2

/**
 * What a text finds, grouped. `settled` says that the answers belong to this very text: until then those of the text before are shown, and Enter waits. The
 * text itself stays in this page: it is sent in a body and kept in no address.
 */
export function useFindings(text: string) {
  const { api, me } = useSession()
  const pageWords = useWords('page')
  const words = useFindWords()
  const typed = text.trim()
  const [asked, setAsked] = useState('')
  useEffect(() => {
    const waiting = setTimeout(() => setAsked(typed), typed === '' ? 0 : PAUSE_MS)
    return () => clearTimeout(waiting)
  }, [typed])
  const worth = asked.length >= SHORTEST
  const look = useQuery(api.find.look.queryOptions({ input: { q: asked }, enabled: worth, placeholderData: keepPreviousData }))
  const found = worth ? look.data : undefined
  const groups = useMemo(
    () => (asked === '' ? [] : findGroups(found?.findings ?? [], pagesFor(me, pageWords), asked, me.company, words)),
    [found, asked, me, pageWords, words],
  )
  return {
    groups,
    near: found?.near ?? false,
    settled: asked === typed && (!worth || (!look.isFetching && !look.isPlaceholderData) || look.isError),
    error: worth ? look.error : null,
  }
}
