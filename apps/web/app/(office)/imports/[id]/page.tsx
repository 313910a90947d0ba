import type { Metadata } from 'next'
import { ImportWizard } from '@/features/imports/import-wizard'
import { recordId } from '@/server/record-page'

export const metadata: Metadata = { title: 'Import a file' }

export default async function ImportPage({ params }: { params: Promise<{ id: string }> }) {
  return <ImportWizard batchId={await recordId('importBatch', (await params).id)} />
}
