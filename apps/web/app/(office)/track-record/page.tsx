import type { Metadata } from 'next'
import { TrackRecordPage } from '@/features/track-record/track-record'

export const metadata: Metadata = { title: 'Track record' }

export default function Page() {
  return <TrackRecordPage />
}
