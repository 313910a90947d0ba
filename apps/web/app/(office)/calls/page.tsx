import type { Metadata } from 'next'
import { Calls } from '@/features/calls/calls'

export const metadata: Metadata = { title: 'Calls' }

export default function CallsPage() {
  return <Calls />
}
