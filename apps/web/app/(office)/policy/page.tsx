import type { Metadata } from 'next'
import { Suspense } from 'react'
import { WhenToAct } from '@/features/policy/when-to-act'

export const metadata: Metadata = { title: 'Best age to rebed' }

export default function PolicyPage() {
  return (
    <Suspense>
      <WhenToAct />
    </Suspense>
  )
}
