import type { Metadata } from 'next'
import { Sessions } from '@/features/sessions/sessions'

export const metadata: Metadata = { title: 'Signed-in devices' }

export default function SessionsPage() {
  return <Sessions />
}
