import { Visit } from '@/features/visit/visit'
import { ownTitle } from '@/server/page-title'
import { recordId } from '@/server/record-page'

export const generateMetadata = ownTitle('visit')

export default async function VisitPage({ params }: { params: Promise<{ id: string }> }) {
  return <Visit visitId={await recordId('visit', (await params).id)} />
}
