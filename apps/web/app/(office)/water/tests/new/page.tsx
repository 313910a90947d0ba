import { RecordTest } from '@/features/water/record-test'
import { ownTitle } from '@/server/page-title'

export const generateMetadata = ownTitle('newTest')

export default async function NewTestPage({ searchParams }: { searchParams: Promise<{ site?: string }> }) {
  const { site } = await searchParams
  return <RecordTest siteId={site ?? ''} />
}
