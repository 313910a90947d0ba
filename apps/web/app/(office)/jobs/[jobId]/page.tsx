import type { Metadata } from 'next'
import { Job } from '@/features/job/job'

export const metadata: Metadata = { title: 'Job' }

export default async function JobPage({ params }: { params: Promise<{ jobId: string }> }) {
  return <Job jobId={(await params).jobId} />
}
