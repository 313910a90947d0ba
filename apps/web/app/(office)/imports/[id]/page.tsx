import { ImportWizard } from '@/features/imports/import-wizard'
import { ownTitle } from '@/server/page-title'
import { recordId } from '@/server/record-page'

export const generateMetadata = ownTitle('importFile')

export default async function ImportPage({ params }: { params: Promise<{ id: string }> }) {
  return <ImportWizard batchId={await recordId('importBatch', (await params).id)} />
}
