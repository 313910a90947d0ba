import { messagesOf } from '@almanac/words/messages-of'
import { wordsIn } from '@almanac/words/words-in'
import type { Metadata } from 'next'
import { headers } from 'next/headers'
import { WordsProvider } from '@/client/words-provider'
import { SignIn } from '@/features/sign-in/sign-in'
import { browserLanguage } from '@/server/browser-language'

export const dynamic = 'force-dynamic'

export async function generateMetadata(): Promise<Metadata> {
  const language = browserLanguage(await headers())
  return { title: wordsIn(language, 'signIn')('title') }
}

/** Nobody is known yet: the page speaks the browser's language. */
export default async function SignInPage() {
  const language = browserLanguage(await headers())
  return (
    <WordsProvider locale={language} timeZone="UTC" messages={messagesOf('public', language)}>
      <SignIn />
    </WordsProvider>
  )
}
