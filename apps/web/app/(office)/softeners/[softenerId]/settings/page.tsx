import type { Metadata } from 'next'
import { Suspense } from 'react'
import { SettingsCard } from '@/features/settings-card/settings-card'
import { recordId } from '@/server/record-page'

export const metadata: Metadata = { title: 'Settings card' }

export default async function SettingsPage({ params }: { params: Promise<{ softenerId: string }> }) {
  const softenerId = await recordId('softener', (await params).softenerId)
  return (
    <Suspense>
      <SettingsCard softenerId={softenerId} />
    </Suspense>
  )
}
