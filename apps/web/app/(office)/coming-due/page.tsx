import type { Metadata } from 'next'
import { Suspense } from 'react'
import { ComingDue } from '@/features/coming-due/coming-due'

export const metadata: Metadata = { title: 'Coming due' }

export default function ComingDuePage() {
  return (
    <Suspense>
      <ComingDue />
    </Suspense>
  )
}
