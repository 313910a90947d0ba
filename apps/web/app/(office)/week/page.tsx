import { Suspense } from 'react'
import { Week } from '@/features/week/week'
import { menuTitle } from '@/server/page-title'

export const generateMetadata = menuTitle('/week')

export default function WeekPage() {
  return (
    <Suspense>
      <Week />
    </Suspense>
  )
}
