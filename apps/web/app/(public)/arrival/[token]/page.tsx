import { oneOf } from '@almanac/records/choices'
import { languages, localeFor } from '@almanac/records/language'
import { wordsIn } from '@almanac/words/words-in'
import type { Metadata } from 'next'
import { notFound } from 'next/navigation'
import { ChooseArrival } from '@/features/arrival/choose-arrival'
import { readArrivalLink } from '@/server/arrival-link'

export const dynamic = 'force-dynamic'

type Props = { params: Promise<{ token: string }>; searchParams: Promise<{ answer?: string; l?: string }> }

export async function generateMetadata(props: Props): Promise<Metadata> {
  const offer = await readOffer(props)
  return { title: offer ? wordsIn(offer.locale, 'arrival')('title') : undefined, robots: { index: false }, referrer: 'no-referrer' }
}

/** The offer in the language that its reader chose on the page, or else in that of the contact. */
async function readOffer({ params, searchParams }: Props) {
  const offer = await readArrivalLink((await params).token)
  return offer && { ...offer, locale: localeFor(oneOf(languages, (await searchParams).l), offer.locale) }
}

export default async function ArrivalPage(props: Props) {
  const offer = await readOffer(props)
  if (!offer) notFound()
  return <ChooseArrival offer={offer} answer={(await props.searchParams).answer} />
}
