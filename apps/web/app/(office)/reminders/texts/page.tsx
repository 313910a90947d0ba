import { ReminderTexts } from '@/features/reminder-texts/reminder-texts'
import { menuTitle } from '@/server/page-title'

export const generateMetadata = menuTitle('/reminders/texts')

export default function ReminderTextsPage() {
  return <ReminderTexts />
}
