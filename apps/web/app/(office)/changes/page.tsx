import { Changes } from '@/features/changes/changes'
import { menuTitle } from '@/server/page-title'

export const generateMetadata = menuTitle('/changes')

type Query = { site?: string | string[] }

export default async function ChangesPage({ searchParams }: { searchParams: Promise<Query> }) {
  const { site } = await searchParams
  return <Changes siteId={typeof site === 'string' ? site : undefined} />
}
