import type { Metadata } from 'next'
import { Sessions } from '@/features/sessions/sessions'

export const metadata: Metadata = { title: 'Where you are signed in' }

export default function SessionsPage() {
  return <Sessions />
}
