import { oneOf } from '@almanac/records/choices'
import { languages, localeFor } from '@almanac/records/language'
import { wordsIn } from '@almanac/words/words-in'
import type { Metadata } from 'next'
import { notFound } from 'next/navigation'
import { OwnerMeasure } from '@/features/owner-measure/owner-measure'
import { readLinkedGuide } from '@/server/guide-link'

export const dynamic = 'force-dynamic'

type Props = { params: Promise<{ token: string }>; searchParams: Promise<{ step?: string; said?: string; l?: string }> }

export async function generateMetadata(props: Props): Promise<Metadata> {
  const found = await readGuide(props)
  return { title: found ? wordsIn(found.locale, 'ownerMeasure')('title') : undefined, robots: { index: false }, referrer: 'no-referrer' }
}

/** The guide in the language that its reader chose on the page, or else in the company's. */
async function readGuide({ params, searchParams }: Props) {
  const found = await readLinkedGuide((await params).token)
  return found && { ...found, locale: localeFor(oneOf(languages, (await searchParams).l), found.locale) }
}

export default async function MeasurePage(props: Props) {
  const found = await readGuide(props)
  if (!found) notFound()
  const { step, said } = await props.searchParams
  return <OwnerMeasure guide={found} step={step} said={said} />
}
