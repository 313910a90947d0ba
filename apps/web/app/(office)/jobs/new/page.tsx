import type { Metadata } from 'next'
import { NewJobForm } from '@/features/job/propose-job'

export const metadata: Metadata = { title: 'Add a job' }

export default async function NewJobPage({
  searchParams,
}: {
  searchParams: Promise<{ site?: string; bed?: string; kind?: string; after?: string }>
}) {
  const { site, bed, kind, after } = await searchParams
  return <NewJobForm siteId={site ?? ''} bedId={bed ?? ''} wanted={kind} after={after} />
}
