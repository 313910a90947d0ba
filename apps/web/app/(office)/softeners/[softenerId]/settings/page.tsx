import { Suspense } from 'react'
import { SettingsCard } from '@/features/settings-card/settings-card'
import { ownTitle } from '@/server/page-title'
import { recordId } from '@/server/record-page'

export const generateMetadata = ownTitle('card')

export default async function SettingsPage({ params }: { params: Promise<{ softenerId: string }> }) {
  const softenerId = await recordId('softener', (await params).softenerId)
  return (
    <Suspense>
      <SettingsCard softenerId={softenerId} />
    </Suspense>
  )
}
