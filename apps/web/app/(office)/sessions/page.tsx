import type { Metadata } from 'next'
import { Sessions } from '@/features/sessions/sessions'

export const metadata: Metadata = { title: 'Your account' }

export default function SessionsPage() {
  return <Sessions />
}
