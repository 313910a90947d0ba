import type { Metadata } from 'next'
import { ReminderTexts } from '@/features/reminder-texts/reminder-texts'

export const metadata: Metadata = { title: 'Reminder texts' }

export default function ReminderTextsPage() {
  return <ReminderTexts />
}
