import { Job } from '@/features/job/job'
import { ownTitle } from '@/server/page-title'
import { recordId } from '@/server/record-page'

export const generateMetadata = ownTitle('job')

export default async function JobPage({ params }: { params: Promise<{ jobId: string }> }) {
  return <Job jobId={await recordId('job', (await params).jobId)} />
}
