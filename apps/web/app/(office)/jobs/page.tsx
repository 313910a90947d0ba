import { Suspense } from 'react'
import { Jobs } from '@/features/jobs/jobs'
import { menuTitle } from '@/server/page-title'

export const generateMetadata = menuTitle('/jobs')

export default function JobsPage() {
  return (
    <Suspense>
      <Jobs />
    </Suspense>
  )
}
