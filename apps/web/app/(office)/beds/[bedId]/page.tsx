import type { Metadata } from 'next'
import { Suspense } from 'react'
import { Bed } from '@/features/bed/bed'

export const metadata: Metadata = { title: 'Bed' }

export default async function BedPage({ params }: { params: Promise<{ bedId: string }> }) {
  const { bedId } = await params
  return (
    <Suspense>
      <Bed bedId={bedId} />
    </Suspense>
  )
}
