import { Suspense } from 'react'
import { Bed } from '@/features/bed/bed'
import { ownTitle } from '@/server/page-title'
import { recordId } from '@/server/record-page'

export const generateMetadata = ownTitle('bed')

export default async function BedPage({ params }: { params: Promise<{ bedId: string }> }) {
  const bedId = await recordId('bed', (await params).bedId)
  return (
    <Suspense>
      <Bed bedId={bedId} />
    </Suspense>
  )
}
