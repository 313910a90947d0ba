import type { Metadata } from 'next'
import { Visit } from '@/features/visit/visit'
import { recordId } from '@/server/record-page'

export const metadata: Metadata = { title: 'Visit' }

export default async function VisitPage({ params }: { params: Promise<{ id: string }> }) {
  return <Visit visitId={await recordId('visit', (await params).id)} />
}
