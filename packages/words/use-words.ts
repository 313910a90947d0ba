import { createContext, useContext, useMemo } from 'react'
import type { Room } from './catalogue.ts'
import { type Spoken, speak } from './speak.ts'
import type { Words } from './words.ts'

/** What the words of a page are said from; its provider is `client/words-provider.tsx`. */
export const WordsContext = createContext<Spoken | null>(null)

/** The words of a room in the language of whoever looks; under the provider of the office's or of the tablet's pages, which has fewer rooms. */
export function useWords<Name extends Room>(room: Name): Words<Name> {
  const spoken = useContext(WordsContext)
  if (!spoken) throw new Error('useWords is used where no words are provided')
  return useMemo(() => speak(spoken, room), [spoken, room])
}
