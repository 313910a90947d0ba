import type { Metadata } from 'next'
import { Visit } from '@/features/visit/visit'

export const metadata: Metadata = { title: 'Visit' }

export default async function VisitPage({ params }: { params: Promise<{ id: string }> }) {
  return <Visit visitId={(await params).id} />
}
