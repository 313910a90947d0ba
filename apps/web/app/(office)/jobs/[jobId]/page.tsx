import type { Metadata } from 'next'
import { Job } from '@/features/job/job'
import { recordId } from '@/server/record-page'

export const metadata: Metadata = { title: 'Job' }

export default async function JobPage({ params }: { params: Promise<{ jobId: string }> }) {
  return <Job jobId={await recordId('job', (await params).jobId)} />
}
