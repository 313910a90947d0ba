import { oneOf } from '@almanac/records/choices'
import { languages } from '@almanac/records/language'
import { wordsIn } from '@almanac/words/words-in'
import type { Metadata } from 'next'
import { notFound } from 'next/navigation'
import { OwnerMeasure } from '@/features/owner-measure/owner-measure'
import { readLinkedGuide } from '@/server/guide-link'

export const dynamic = 'force-dynamic'

type Props = { params: Promise<{ token: string }>; searchParams: Promise<{ step?: string; said?: string; look?: string; l?: string }> }

export async function generateMetadata(props: Props): Promise<Metadata> {
  const found = await readGuide(props)
  const title =
    found && (found.state === 'measuring' ? wordsIn(found.locale, 'ownerMeasure')('title') : wordsIn(found.locale, 'ownerSteps')('title'))
  return { title: title ?? undefined, robots: { index: false }, referrer: 'no-referrer' }
}

/** The guide in the language that its reader chose on the page, or else in the company's. */
async function readGuide({ params, searchParams }: Props) {
  const { l, look } = await searchParams
  return readLinkedGuide((await params).token, { language: oneOf(languages, l), look: typeof look === 'string' ? look : undefined })
}

export default async function MeasurePage(props: Props) {
  const found = await readGuide(props)
  if (!found) notFound()
  const { step, said } = await props.searchParams
  return <OwnerMeasure guide={found} step={step} said={said} />
}
