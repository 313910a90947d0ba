import type { Metadata } from 'next'
import { notFound } from 'next/navigation'
import { ChooseArrival } from '@/features/arrival/choose-arrival'
import { readArrivalLink } from '@/server/arrival-link'

export const metadata: Metadata = { title: 'Choose a time', robots: { index: false }, referrer: 'no-referrer' }
export const dynamic = 'force-dynamic'

type Props = { params: Promise<{ token: string }>; searchParams: Promise<{ answer?: string }> }

export default async function ArrivalPage({ params, searchParams }: Props) {
  const { token } = await params
  const offer = await readArrivalLink(token)
  if (!offer) notFound()
  return <ChooseArrival offer={offer} answer={(await searchParams).answer} />
}
