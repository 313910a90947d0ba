import type { Metadata } from 'next'
import { Suspense } from 'react'
import { Reminders } from '@/features/reminders/reminders'

export const metadata: Metadata = { title: 'Reminders' }

export default function RemindersPage() {
  return (
    <Suspense>
      <Reminders />
    </Suspense>
  )
}
