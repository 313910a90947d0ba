import type { Metadata } from 'next'
import { Suspense } from 'react'
import { SettingsCard } from '@/features/settings-card/settings-card'

export const metadata: Metadata = { title: 'Settings card' }

export default async function SettingsPage({ params }: { params: Promise<{ softenerId: string }> }) {
  const { softenerId } = await params
  return (
    <Suspense>
      <SettingsCard softenerId={softenerId} />
    </Suspense>
  )
}
