import type { Metadata } from 'next'
import { Archive } from '@/features/archive/archive'

export const metadata: Metadata = { title: 'Archive' }

export default function ArchivePage() {
  return <Archive />
}
