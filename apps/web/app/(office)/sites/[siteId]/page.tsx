import type { Metadata } from 'next'
import { Site } from '@/features/site/site'

export const metadata: Metadata = { title: 'Site' }

export default async function SitePage({ params }: { params: Promise<{ siteId: string }> }) {
  return <Site siteId={(await params).siteId} />
}
