import { Suspense } from 'react'
import { ComingDue } from '@/features/coming-due/coming-due'
import { menuTitle } from '@/server/page-title'

export const generateMetadata = menuTitle('/coming-due')

export default function ComingDuePage() {
  return (
    <Suspense>
      <ComingDue />
    </Suspense>
  )
}
