import type { Metadata } from 'next'
import { Crews } from '@/features/crews/crews'

export const metadata: Metadata = { title: 'People and vehicles' }

export default function CrewsPage() {
  return <Crews />
}
