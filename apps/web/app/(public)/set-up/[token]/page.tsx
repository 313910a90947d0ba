import { timeZones } from '@almanac/units/calendar/zone-clock'
import { currencyCodes, currencyName } from '@almanac/units/money'
import type { Metadata } from 'next'
import { SetUpByLink } from '@/features/set-up/set-up'
import { readOneTimePage } from '@/server/one-time-page'
import { PublicWords } from '@/server/public-words'

export const metadata: Metadata = { title: 'Set up your company', robots: { index: false }, referrer: 'no-referrer' }
export const dynamic = 'force-dynamic'

export default async function SetUpPage({ params }: { params: Promise<{ token: string }> }) {
  const { token } = await params
  const read = await readOneTimePage('set-up', token)
  const page = 'refused' in read ? read : { token, ...formOf(read) }
  // Whoever founds a company reads English, as the office does.
  return (
    <PublicWords in="en">
      <SetUpByLink page={page} />
    </PublicWords>
  )
}

function formOf({ link, person }: Exclude<Awaited<ReturnType<typeof readOneTimePage>>, { refused: string }>) {
  const currencies = currencyCodes().map((value) => ({ value, label: `${currencyName(value)} (${value})` }))
  return {
    ...{ email: link.email, timeZones: timeZones(), currencies },
    person: person && { name: person.name, email: person.email },
  }
}
