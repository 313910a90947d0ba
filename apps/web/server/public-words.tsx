import 'server-only'
import type { Language } from '@almanac/records/language'
import { messagesOf } from '@almanac/words/messages-of'
import { wordsIn } from '@almanac/words/words-in'
import { headers } from 'next/headers'
import type { ReactNode } from 'react'
import { WordsProvider } from '@/client/words-provider'
import { browserLanguage } from './browser-language.ts'

/** The words of a page where nobody is known yet: in the browser's language, or in the one that the page is written in. */
export async function PublicWords({ in: given, children }: { in?: Language; children: ReactNode }) {
  const language = given ?? browserLanguage(await headers())
  return (
    <WordsProvider locale={language} timeZone="UTC" messages={messagesOf('public', language)}>
      {children}
    </WordsProvider>
  )
}

/** The title of a link's page, which no search engine shall know, nor the next page's server. */
export async function linkMetadata(title: 'setPassword' | 'joinCompany' | 'forgotten' | 'found' | 'newEmail') {
  const words = wordsIn(browserLanguage(await headers()), 'join')
  return { title: words(title), robots: { index: false }, referrer: 'no-referrer' as const }
}
