import type { Metadata } from 'next'
import { TrackRecordPage } from '@/features/track-record/track-record'

export const metadata: Metadata = { title: 'How good were we' }

export default function Page() {
  return <TrackRecordPage />
}
