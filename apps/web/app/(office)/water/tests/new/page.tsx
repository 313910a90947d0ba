import type { Metadata } from 'next'
import { RecordTest } from '@/features/water/record-test'

export const metadata: Metadata = { title: 'Record a water test' }

export default async function NewTestPage({ searchParams }: { searchParams: Promise<{ site?: string }> }) {
  const { site } = await searchParams
  return <RecordTest siteId={site ?? ''} />
}
