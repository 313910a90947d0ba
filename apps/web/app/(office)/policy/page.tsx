import { Suspense } from 'react'
import { WhenToAct } from '@/features/policy/when-to-act'
import { menuTitle } from '@/server/page-title'

export const generateMetadata = menuTitle('/policy')

export default function PolicyPage() {
  return (
    <Suspense>
      <WhenToAct />
    </Suspense>
  )
}
