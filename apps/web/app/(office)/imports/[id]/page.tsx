import type { Metadata } from 'next'
import { ImportWizard } from '@/features/imports/import-wizard'

export const metadata: Metadata = { title: 'Import a file' }

export default async function ImportPage({ params }: { params: Promise<{ id: string }> }) {
  return <ImportWizard batchId={(await params).id} />
}
