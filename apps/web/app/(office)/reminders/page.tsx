import { Suspense } from 'react'
import { Reminders } from '@/features/reminders/reminders'
import { menuTitle } from '@/server/page-title'

export const generateMetadata = menuTitle('/reminders')

export default function RemindersPage() {
  return (
    <Suspense>
      <Reminders />
    </Suspense>
  )
}
