import type { Metadata } from 'next'
import { Suspense } from 'react'
import { WhenToAct } from '@/features/policy/when-to-act'

export const metadata: Metadata = { title: 'When to act' }

export default function PolicyPage() {
  return (
    <Suspense>
      <WhenToAct />
    </Suspense>
  )
}
