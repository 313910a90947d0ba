import { Suspense } from 'react'
import { Plan } from '@/features/plan/plan'
import { ownTitle } from '@/server/page-title'

export const generateMetadata = ownTitle('plan')

export default function PlanPage() {
  return (
    <Suspense>
      <Plan />
    </Suspense>
  )
}
