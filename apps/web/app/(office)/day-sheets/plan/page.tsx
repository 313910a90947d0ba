import type { Metadata } from 'next'
import { Suspense } from 'react'
import { Plan } from '@/features/plan/plan'

export const metadata: Metadata = { title: 'Plan' }

export default function PlanPage() {
  return (
    <Suspense>
      <Plan />
    </Suspense>
  )
}
