import type { Metadata } from 'next'
import { Site } from '@/features/site/site'
import { recordId } from '@/server/record-page'

export const metadata: Metadata = { title: 'Site' }

export default async function SitePage({ params }: { params: Promise<{ siteId: string }> }) {
  return <Site siteId={await recordId('site', (await params).siteId)} />
}
