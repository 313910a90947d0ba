import type { Metadata } from 'next'
import { Suspense } from 'react'
import { Jobs } from '@/features/jobs/jobs'

export const metadata: Metadata = { title: 'Jobs' }

export default function JobsPage() {
  return (
    <Suspense>
      <Jobs />
    </Suspense>
  )
}
