import { wordsIn } from '@almanac/words/words-in'
import type { Metadata } from 'next'
import { headers } from 'next/headers'
import { SignIn } from '@/features/sign-in/sign-in'
import { browserLanguage } from '@/server/browser-language'
import { PublicWords } from '@/server/public-words'

export const dynamic = 'force-dynamic'

export async function generateMetadata(): Promise<Metadata> {
  return { title: wordsIn(browserLanguage(await headers()), 'signIn')('title') }
}

/** Nobody is known yet: the page speaks the browser's language. */
export default function SignInPage() {
  return (
    <PublicWords>
      <SignIn />
    </PublicWords>
  )
}
