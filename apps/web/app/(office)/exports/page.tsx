import type { Metadata } from 'next'
import { Exports } from '@/features/exports/exports'

export const metadata: Metadata = { title: 'Export' }

export default function ExportsPage() {
  return <Exports />
}
