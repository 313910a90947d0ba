import type { Metadata } from 'next'
import { Suspense } from 'react'
import { RebedChoice } from '@/features/rebed-choice/rebed-choice'

export const metadata: Metadata = { title: 'Which resin, which way, who' }

export default async function RebedChoicePage({ params }: { params: Promise<{ bedId: string }> }) {
  const { bedId } = await params
  return (
    <Suspense>
      <RebedChoice bedId={bedId} />
    </Suspense>
  )
}
