import type { Metadata } from 'next'
import { Suspense } from 'react'
import { Sites } from '@/features/sites/sites'

export const metadata: Metadata = { title: 'Sites' }

export default function SitesPage() {
  return (
    <Suspense>
      <Sites />
    </Suspense>
  )
}
