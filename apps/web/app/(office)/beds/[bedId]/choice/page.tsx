import { Suspense } from 'react'
import { RebedChoice } from '@/features/rebed-choice/rebed-choice'
import { ownTitle } from '@/server/page-title'
import { recordId } from '@/server/record-page'

export const generateMetadata = ownTitle('choice')

export default async function RebedChoicePage({ params }: { params: Promise<{ bedId: string }> }) {
  const bedId = await recordId('bed', (await params).bedId)
  return (
    <Suspense>
      <RebedChoice bedId={bedId} />
    </Suspense>
  )
}
