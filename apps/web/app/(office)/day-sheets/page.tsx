import { Suspense } from 'react'
import { DaySheets } from '@/features/day-sheets/day-sheets'
import { menuTitle } from '@/server/page-title'

export const generateMetadata = menuTitle('/day-sheets')

export default function DaySheetsPage() {
  return (
    <Suspense>
      <DaySheets />
    </Suspense>
  )
}
