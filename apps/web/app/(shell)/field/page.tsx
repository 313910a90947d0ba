import { wordsIn } from '@almanac/words/words-in'
import type { Metadata } from 'next'
import { headers } from 'next/headers'
import { browserLanguage } from '@/server/browser-language'
import { Shell } from './shell.tsx'

export const metadata: Metadata = { title: "Today's work", manifest: '/field.webmanifest' }

/** The field's pages without the server: kept by the browser, filled from what lies on the device. It says nothing of anybody, so nobody need be signed in. */
export default async function ShellPage() {
  const words = wordsIn(browserLanguage(await headers()), 'sending')
  return <Shell emptyTitle={words('emptyTitle')} emptyText={words('emptyText')} />
}
