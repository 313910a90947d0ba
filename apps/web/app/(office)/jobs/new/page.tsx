import { NewJobForm } from '@/features/job/propose-job'
import { ownTitle } from '@/server/page-title'

export const generateMetadata = ownTitle('newJob')

export default async function NewJobPage({
  searchParams,
}: {
  searchParams: Promise<{ site?: string; bed?: string; kind?: string; after?: string }>
}) {
  const { site, bed, kind, after } = await searchParams
  return <NewJobForm siteId={site ?? ''} bedId={bed ?? ''} wanted={kind} after={after} />
}
