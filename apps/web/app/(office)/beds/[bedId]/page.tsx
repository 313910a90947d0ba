import type { Metadata } from 'next'
import { Suspense } from 'react'
import { Bed } from '@/features/bed/bed'
import { recordId } from '@/server/record-page'

export const metadata: Metadata = { title: 'Bed' }

export default async function BedPage({ params }: { params: Promise<{ bedId: string }> }) {
  const bedId = await recordId('bed', (await params).bedId)
  return (
    <Suspense>
      <Bed bedId={bedId} />
    </Suspense>
  )
}
