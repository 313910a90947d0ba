import type { Metadata } from 'next'
import { Imports } from '@/features/imports/imports'

export const metadata: Metadata = { title: 'Import' }

export default function ImportsPage() {
  return <Imports />
}
