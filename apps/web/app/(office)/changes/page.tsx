import type { Metadata } from 'next'
import { Changes } from '@/features/changes/changes'

export const metadata: Metadata = { title: 'Changes' }

type Query = { site?: string | string[] }

export default async function ChangesPage({ searchParams }: { searchParams: Promise<Query> }) {
  const { site } = await searchParams
  return <Changes siteId={typeof site === 'string' ? site : undefined} />
}
