import { Site } from '@/features/site/site'
import { ownTitle } from '@/server/page-title'
import { recordId } from '@/server/record-page'

export const generateMetadata = ownTitle('site')

export default async function SitePage({ params }: { params: Promise<{ siteId: string }> }) {
  return <Site siteId={await recordId('site', (await params).siteId)} />
}
