import type { Metadata } from 'next'
import { Today } from '@/features/today/today'

export const metadata: Metadata = { title: "Today's work" }

export default function TodayPage() {
  return <Today />
}
