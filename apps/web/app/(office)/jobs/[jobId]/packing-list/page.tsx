import { PackingList } from '@/features/job/packing-list'
import { ownTitle } from '@/server/page-title'
import { recordId } from '@/server/record-page'

export const generateMetadata = ownTitle('packingList')

export default async function PackingListPage({ params }: { params: Promise<{ jobId: string }> }) {
  return <PackingList jobId={await recordId('job', (await params).jobId)} />
}
