import type { Metadata } from 'next'
import { Suspense } from 'react'
import { RebedChoice } from '@/features/rebed-choice/rebed-choice'
import { recordId } from '@/server/record-page'

export const metadata: Metadata = { title: 'Rebed options, who' }

export default async function RebedChoicePage({ params }: { params: Promise<{ bedId: string }> }) {
  const bedId = await recordId('bed', (await params).bedId)
  return (
    <Suspense>
      <RebedChoice bedId={bedId} />
    </Suspense>
  )
}
