import type { Metadata } from 'next'
import { Suspense } from 'react'
import { Week } from '@/features/week/week'

export const metadata: Metadata = { title: 'Week' }

export default function WeekPage() {
  return (
    <Suspense>
      <Week />
    </Suspense>
  )
}
