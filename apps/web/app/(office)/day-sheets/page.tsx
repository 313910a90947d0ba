import type { Metadata } from 'next'
import { Suspense } from 'react'
import { DaySheets } from '@/features/day-sheets/day-sheets'

export const metadata: Metadata = { title: 'Day sheets' }

export default function DaySheetsPage() {
  return (
    <Suspense>
      <DaySheets />
    </Suspense>
  )
}
