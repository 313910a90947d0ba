import { headers } from 'next/headers'
import { browserLanguage } from '@/server/browser-language'
import { NothingHere } from '@/server/nothing-here'

/** Of an address that leads nowhere: nobody need be known, and a customer may stand here with an old link. */
export default async function NotFound() {
  const locale = browserLanguage(await headers())
  return (
    <main lang={locale} className="mx-auto max-w-2xl px-6 py-16">
      <NothingHere locale={locale} fromLink />
    </main>
  )
}
